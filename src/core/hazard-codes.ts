/** What the Hazards cell of a material says: codes of statements, and plain words. */
export interface HazardText {
  /** Each once, in the order in which they stand; parts joined by + without spaces, the letter in front in capitals. */
  readonly codes: readonly string[];
  /** What stands between and beside the codes. */
  readonly words: readonly string[];
}

const PART = String.raw`(?:EUH|H|P)[ \u00a0-]?\d{3}[A-Za-z]{0,2}`;
/** A code, or several joined by +, of which only the first need name its letter: H302+H332, H302 + 332. */
const CODES = new RegExp(
  String.raw`(?<![\p{L}\p{N}])${PART}(?:\s*\+\s*(?:${PART}|\d{3}[A-Za-z]{0,2}))*(?![\p{L}\p{N}])`,
  'giu',
);

/**
 * Takes a Hazards cell apart. Nothing is dropped: what is no code stays among the words. Whether a code is in the
 * published table is another matter: see hazard-statements.ts.
 */
export function readHazards(text: string): HazardText {
  const codes = [...text.matchAll(CODES)].map(([found]) => written(found));
  const words = text.split(CODES).map(withoutSeparators).filter(hasWords);
  return { codes: [...new Set(codes)], words };
}

/** The parts with their letters, so that the same code typed in another way is the same text. */
function written(found: string): string {
  let letters = '';
  return found
    .split('+')
    .map((part) => {
      const [, prefix = '', digits = '', variant = ''] =
        /^(EUH|H|P)?[\s-]*(\d{3})([A-Za-z]*)$/i.exec(part.trim()) ?? [];
      if (prefix !== '') letters = prefix.toUpperCase();
      return `${letters}${digits}${variant}`;
    })
    .join('+');
}

function withoutSeparators(between: string): string {
  return between.replace(/^[\s,;:|/+&)\].]+/u, '').replace(/[\s,;:|/+&([]+$/u, '');
}

function hasWords(text: string): boolean {
  return /[\p{L}\p{N}]/u.test(text);
}
