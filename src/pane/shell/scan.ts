/** What has been typed fast enough that only a scanner can have typed it. */
export interface Scanning {
  readonly text: string;
  /** When its last character came, in milliseconds. */
  readonly at: number;
}

export const NO_SCAN: Scanning = { text: '', at: Number.NEGATIVE_INFINITY };

export interface ScanStep {
  readonly scanning: Scanning;
  /** The code, once Enter has ended it. */
  readonly code: string | null;
  /** Whether the key belongs to a scan, and must not press what has the focus. */
  readonly belongs: boolean;
}

/** A scanner types a character every few milliseconds; a quick hand takes more than 60 between two. */
const FAST_MILLISECONDS = 50;
/** Fewer characters are no code: two keys may be hit at once by accident. */
const SHORTEST_CODE = 3;

/** Takes in a key that was pressed outside all fields, where a scanner's codes would be lost, or press buttons. */
export function scanStep(before: Scanning, key: string, at: number): ScanStep {
  const isFast = at - before.at <= FAST_MILLISECONDS;
  if (key === 'Enter') {
    const isCode = isFast && before.text.length >= SHORTEST_CODE;
    return { scanning: NO_SCAN, code: isCode ? before.text : null, belongs: isCode };
  }
  // Shift and the like come between the characters.
  if (key.length !== 1) return { scanning: before, code: null, belongs: false };
  const text = isFast ? before.text + key : key;
  return { scanning: { text, at }, code: null, belongs: isFast };
}
