/**
 * Health hazards: H300 to H373.
 * The source, its licence, and how a line reads: see source.ts and statement-table.ts.
 */
export const HEALTH_HAZARDS = `
H300|D6||Fatal if swallowed
H301|D6||Toxic if swallowed
H302|W7||Harmful if swallowed
H303|W||May be harmful if swallowed
H304|D8||May be fatal if swallowed and enters airways
H305|W8||May be harmful if swallowed and enters airways
H310|D6|280|Fatal in contact with skin
H311|D6|280|Toxic in contact with skin
H312|W7|280|Harmful in contact with skin
H313|W||May be harmful in contact with skin
H314|D5|280|Causes severe skin burns and eye damage
H315|W7|280|Causes skin irritation
H316|W||Causes mild skin irritation
H317|W7|280|May cause an allergic skin reaction
H318|D5|280|Causes serious eye damage
H319|W7|280|Causes serious eye irritation
H320|W||Causes eye irritation
H330|D6|284|Fatal if inhaled
H331|D6||Toxic if inhaled
H332|W7||Harmful if inhaled
H333|W||May be harmful if inhaled
H334|D8|284|May cause allergy or asthma symptoms or breathing difficulties if inhaled
H335|W7||May cause respiratory irritation
H336|W7||May cause drowsiness or dizziness
H340|D8|280|May cause genetic defects
H341|W8|280|Suspected of causing genetic defects
H350|D8|280|May cause cancer
H350i|D8|280|May cause cancer by inhalation
H351|W8|280|Suspected of causing cancer
H360|D8|280|May damage fertility or the unborn child
H360F|D8|280|May damage fertility
H360D|D8|280|May damage the unborn child
H360FD|D8|280|May damage fertility; May damage the unborn child
H360Fd|D8|280|May damage fertility; Suspected of damaging the unborn child
H360Df|D8|280|May damage the unborn child; Suspected of damaging fertility
H361|W8|280|Suspected of damaging fertility or the unborn child
H361f|W8|280|Suspected of damaging fertility
H361d|W8|280|Suspected of damaging the unborn child
H361fd|W8|280|Suspected of damaging fertility; Suspected of damaging the unborn child
H362|||May cause harm to breast-fed children
H370|D8||Causes damage to organs
H371|W8||May cause damage to organs
H372|D8||Causes damage to organs through prolonged or repeated exposure
H373|W8||May causes damage to organs through prolonged or repeated exposure
`;
