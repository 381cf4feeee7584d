/**
 * Statements of two or three hazards in one sentence.
 * The source, its licence, and how a line reads: see source.ts and statement-table.ts.
 */
export const COMBINED_HAZARDS = `
H300+H310|D6||Fatal if swallowed or in contact with skin
H300+H330|D6||Fatal if swallowed or if inhaled
H310+H330|D6||Fatal in contact with skin or if inhaled
H300+H310+H330|D6||Fatal if swallowed, in contact with skin or if inhaled
H301+H311|D6||Toxic if swallowed or in contact with skin
H301+H331|D6||Toxic if swallowed or if inhaled
H311+H331|D6||Toxic in contact with skin or if inhaled.
H301+H311+H331|D6||Toxic if swallowed, in contact with skin or if inhaled
H302+H312|W7||Harmful if swallowed or in contact with skin
H302+H332|W7||Harmful if swallowed or if inhaled
H312+H332|W7||Harmful in contact with skin or if inhaled
H302+H312+H332|W7||Harmful if swallowed, in contact with skin or if inhaled
H303+H313|W||May be harmful if swallowed or in contact with skin
H303+H333|W||May be harmful if swallowed or if inhaled
H313+H333|W||May be harmful in contact with skin or if inhaled
H303+H313+H333|W||May be harmful if swallowed, in contact with skin or if inhaled
H315+H320|W7||Cause skin and eye irritation
`;
