/** The key by which identifiers, references and fixed words compare: trimmed, case ignored. */
export function keyOf(text: string): string {
  return text.trim().toLowerCase();
}

/** 28 characters that can't be mistaken for each other on a jar: no 0 O I 1 S B Z U. */
const CHARACTERS = '23456789ACDEFGHJKLMNPQRTVWXY';
const LENGTH = 8;

/**
 * What a spreadsheet might take for a date (MAR12, in Dutch MAART2027), a number (1E5) or a cell (ABC234567,
 * R2C3). Any letters followed only by digits are left out, as months have other names in other languages.
 */
const MISREAD = /^(?:JAN|FEB|MAR|APR|MAY|JUN|JUL|AUG|SEP|OCT|NOV|DEC)|^[A-Z]+\d+$|^R\d*C\d*$|\dE\d+$/i;

/** More tries than a random generator ever needs. */
const TRIES = 1000;

/** Gives random numbers from 0 up to, not including, 1. */
export type Random = () => number;

/** Makes identifiers that nothing in the workbook has yet, nor any that this maker gave before. */
export type IdentifierMaker = (letter: string) => string;

/**
 * A maker of new identifiers: the table's letter and eight random characters.
 * @param taken the keys (see keyOf) of all identifiers in use
 * @throws where the generator keeps giving numbers that make no new identifier
 */
export function identifierMaker(random: Random, taken: ReadonlySet<string>): IdentifierMaker {
  const given = new Set<string>();
  return (letter) => {
    for (let tried = 0; tried < TRIES; tried += 1) {
      let identifier = letter;
      for (let place = 0; place < LENGTH; place += 1) {
        identifier += CHARACTERS.charAt(Math.floor(random() * CHARACTERS.length));
      }
      const key = keyOf(identifier);
      if (MISREAD.test(identifier) || taken.has(key) || given.has(key)) continue;
      given.add(key);
      return identifier;
    }
    throw new Error(`no new identifier in ${TRIES} tries: the random generator repeats itself`);
  };
}
