/**
 * Environmental hazards: H400 to H420.
 * The source, its licence, and how a line reads: see source.ts and statement-table.ts.
 */
export const ENVIRONMENTAL_HAZARDS = `
H400|W9||Very toxic to aquatic life
H401|||Toxic to aquatic life
H402|||Harmful to aquatic life
H410|W9||Very toxic to aquatic life with long lasting effects
H411|9||Toxic to aquatic life with long lasting effects
H412|||Harmful to aquatic life with long lasting effects
H413|||May cause long lasting harmful effects to aquatic life
H420|W7||Harms public health and the environment by destroying ozone in the upper atmosphere
`;
