/**
 * How large a workbook may be. Beyond these it is refused: no bench has such a workbook, but a file made to
 * exhaust the computer's memory (a "zip bomb") does.
 */

/** Bytes of the file on disk. */
export const MAX_FILE_BYTES = 256 * 1024 * 1024;
/** Entries of the zip container. */
export const MAX_ENTRIES = 20_000;
/** Uncompressed bytes of one part; a string in JavaScript holds little more. */
export const MAX_PART_BYTES = 400 * 1024 * 1024;
/** Uncompressed bytes of all parts together. */
export const MAX_TOTAL_BYTES = 1024 * 1024 * 1024;
/** Uncompressed size over compressed size; sheets reach some 50, deflate at most 1,032. */
export const MAX_RATIO = 300;
/** Parts up to this many uncompressed bytes may have any ratio. */
export const RATIO_FREE_BYTES = 16 * 1024 * 1024;
/** Cells of one table, blank ones too. */
export const MAX_TABLE_CELLS = 40_000_000;
/** Rows and columns of a tab, and characters of a cell, as ISO/IEC 29500 spreadsheets have them. */
export const MAX_ROWS = 1_048_576;
export const MAX_COLUMNS = 16_384;
export const MAX_CELL_CHARACTERS = 32_767;
export const MAX_FORMULA_CHARACTERS = 8192;
