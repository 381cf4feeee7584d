/**
 * Series productC of an R data package, 36 months, printed on a public page of worked forecasts: read. Its 11 uses are
 * 2 1 11 2 6 3 7 3 1 1 1, the intervals between them, the first counted from the start, 2 2 2 5 2 1 6 8 1 3 2.
 */
export const PRODUCT_C: readonly number[] = [
  0, 2, 0, 1, 0, 11, 0, 0, 0, 0, 2, 0, 6, 3, 0, 0, 0, 0, 0, 7, 0, 0, 0, 0, 0, 0, 0, 3, 1, 0, 0, 1, 0, 1, 0, 0,
];
