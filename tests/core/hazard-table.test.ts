import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { PICTOGRAMS } from '../../src/core/ghs/pictograms.ts';
import { PUBLISHED_STATEMENTS } from '../../src/core/ghs/statement-table.ts';
import { statementOf } from '../../src/core/hazard-statements.ts';
import { labelWords } from '../../src/core/hazard-wording.ts';

/** The lines as a text file, and its SHA-256. */
function digest(lines: readonly string[]): string {
  return createHash('sha256')
    .update(lines.map((line) => `${line}\n`).join(''))
    .digest('hex');
}

const startingWith = (pattern: RegExp) => PUBLISHED_STATEMENTS.filter(({ code }) => pattern.test(code));

/**
 * The published file: github.com/cheminfo/ghs-hazard, data/ghscode_10.txt at commit c090d166 (from PubChem's GHS page).
 * Its digests were taken from the file itself, apart from this project, by
 *   iconv -f latin1 -t utf8 ghscode_10.txt | awk -F'\t' '…' | sha256sum
 * with the programs beside each; so every row counts though the file is not kept here.
 */
describe('against all rows of the published file', () => {
  test('every hazard sentence with its pictograms and signal words', () => {
    // /^H[0-9]/ {l = $1 FS $2 FS $6 FS $7; gsub(/ +\t/, "\t", l); if (!seen[l]++) print l}
    const rows = startingWith(/^H/).flatMap(({ code, sentence, categories }) =>
      categories.map(({ signal, pictograms }) =>
        [code, sentence, pictograms.join(','), signal ?? ''].join('\t'),
      ),
    );
    expect(rows).toHaveLength(120);
    expect(digest(rows)).toBe('f6c69334f5856f99ed17ac8e55c2a1fb51d40abeaee84cb6af684a6ea05d94d5');
  });

  test('every precautionary sentence', () => {
    // /^P[0-9]/ {print $1 FS $2}, piped through sed 's/ *\t */\t/; s/ *$//'
    const rows = startingWith(/^P/).map(({ code, sentence }) => `${code}\t${sentence}`);
    expect(rows).toHaveLength(168);
    expect(digest(rows)).toBe('28a87835e5df293c2f69ba70328bdb6e787ffae1e24e4bbfb610ed87e0658e87');
  });

  test('which hazards call for which protective equipment', () => {
    // /^H[0-9]/ {n = ""; m = split($8, a, /[^P0-9]+/); for (i = 1; i <= m; i++) if (a[i] ~ /^P28/) n = n a[i] " ";
    //   print $1 FS n}, then awk '!s[$0]++' and sed 's/ *$//'
    const rows = startingWith(/^H/).map(({ code, protection }) => `${code}\t${protection.join(' ')}`);
    expect(digest(rows)).toBe('9e8457ad0b31a70c60ca16f71210bd37e0487e4004f6b99ff40a017bc1927585');
  });

  test('the supplemental statements are as many as data/euh.mjs of the same repository has (commit e411e80f)', () => {
    expect(startingWith(/^EUH/)).toHaveLength(26);
  });
});

describe('rows retyped', () => {
  // From the published file; by the codes that a bench's materials bear.
  test.each([
    ['H224', 'Extremely flammable liquid and vapor', 'Danger; flame (GHS02)'],
    ['H225', 'Highly Flammable liquid and vapor', 'Danger; flame (GHS02)'],
    ['H226', 'Flammable liquid and vapor', 'Warning; flame (GHS02)'],
    [
      'H260',
      'In contact with water releases flammable gases which may ignite spontaneously',
      'Danger; flame (GHS02)',
    ],
    ['H261', 'In contact with water releases flammable gas', 'Danger or Warning, by category; flame (GHS02)'],
    ['H271', 'May cause fire or explosion; strong Oxidizer', 'Danger; flame over circle (GHS03)'],
    ['H272', 'May intensify fire; oxidizer', 'Danger or Warning, by category; flame over circle (GHS03)'],
    [
      'H282',
      'Extremely flammable chemical under pressure: may explode if heated',
      'Danger; flame (GHS02) and gas cylinder (GHS04)',
    ],
    ['H290', 'May be corrosive to metals', 'Warning; corrosion (GHS05)'],
    ['H301', 'Toxic if swallowed', 'Danger; skull and crossbones (GHS06)'],
    ['H302', 'Harmful if swallowed', 'Warning; exclamation mark (GHS07)'],
    ['H303', 'May be harmful if swallowed', 'Warning'],
    ['H314', 'Causes severe skin burns and eye damage', 'Danger; corrosion (GHS05)'],
    ['H315', 'Causes skin irritation', 'Warning; exclamation mark (GHS07)'],
    ['H318', 'Causes serious eye damage', 'Danger; corrosion (GHS05)'],
    ['H319', 'Causes serious eye irritation', 'Warning; exclamation mark (GHS07)'],
    ['H335', 'May cause respiratory irritation', 'Warning; exclamation mark (GHS07)'],
    ['H336', 'May cause drowsiness or dizziness', 'Warning; exclamation mark (GHS07)'],
    ['H350i', 'May cause cancer by inhalation', 'Danger; health hazard (GHS08)'],
    ['H360FD', 'May damage fertility; May damage the unborn child', 'Danger; health hazard (GHS08)'],
    [
      'H360Fd',
      'May damage fertility; Suspected of damaging the unborn child',
      'Danger; health hazard (GHS08)',
    ],
    ['H400', 'Very toxic to aquatic life', 'Warning; environment (GHS09)'],
    ['H411', 'Toxic to aquatic life with long lasting effects', 'environment (GHS09)'],
    ['H412', 'Harmful to aquatic life with long lasting effects', ''],
    ['H302+H332', 'Harmful if swallowed or if inhaled', 'Warning; exclamation mark (GHS07)'],
    ['H200', '(Deleted) Unstable Explosive', 'Danger; exploding bomb (GHS01)'],
    // Of two pictograms one by category, of one none by category, and two together.
    [
      'H204',
      'Fire or projection hazard',
      'Warning; exploding bomb (GHS01) or exclamation mark (GHS07), by category',
    ],
    ['H221', 'Flammable gas', 'Danger or Warning, by category; flame (GHS02) or none, by category'],
    ['H241', 'Heating may cause a fire or explosion', 'Danger; exploding bomb (GHS01) and flame (GHS02)'],
    // From data/euh.mjs.
    ['EUH014', 'Reacts violently with water', ''],
    ['EUH031', 'Contact with acids liberates toxic gas', ''],
    ['EUH066', 'Repeated exposure may cause skin dryness or cracking', ''],
    ['EUH071', 'Corrosive to the respiratory tract', ''],
    ['EUH209A', 'Can become flammable in use.', ''],
    ['P264', 'Wash hands [and ...] thoroughly after handling.', ''],
    ['P271', 'Use only outdoors or in a well-ventilated area.', ''],
    [
      'P280',
      'Wear protective gloves/protective clothing/eye protection/face protection/hearing protection/...',
      '',
    ],
    ['P312', '(Deleted) Call a POISON CENTER or doctor/... if you feel unwell.', ''],
    [
      'P305+P351+P338',
      'IF IN EYES: Rinse cautiously with water for several minutes. Remove contact lenses if present and easy to do - continue rinsing.',
      '',
    ],
    ['P412', 'Do not expose to temperatures exceeding 50 °C/ 122 °F.', ''],
  ])('%s', (code, sentence, label) => {
    const statement = statementOf(code);
    expect([statement.sentence, labelWords(statement)]).toEqual([sentence, label]);
  });

  // From a list of the European Commission (ec.europa.eu, SAMANCTA, Safety/HP_EN, 2021): another source, whose spelling
  // and full stops differ, its sentences don't.
  test.each([
    ['H220', 'Extremely flammable gas.'],
    ['H222', 'Extremely flammable aerosol.'],
    ['H224', 'Extremely flammable liquid and vapour.'],
    ['H225', 'Highly flammable liquid and vapour.'],
    ['H226', 'Flammable liquid and vapour.'],
    ['H228', 'Flammable solid.'],
    ['H230', 'May react explosively even in the absence of air.'],
    ['H240', 'Heating may cause an explosion.'],
    ['H241', 'Heating may cause a fire or explosion.'],
    ['H242', 'Heating may cause a fire.'],
    ['H250', 'Catches fire spontaneously if exposed to air.'],
  ])('%s says the same in a European list', (code, sentence) => {
    const spelling = (text: string) => text.toLowerCase().replaceAll('vapour', 'vapor').replace(/\.$/, '');
    expect(spelling(statementOf(code).sentence ?? '')).toBe(spelling(sentence));
  });
});

test('no statement stands twice, and each pictogram is one of nine', () => {
  const codes = PUBLISHED_STATEMENTS.map(({ code }) => code);
  expect(new Set(codes).size).toBe(codes.length);
  expect(Object.keys(PICTOGRAMS)).toHaveLength(9);
  const shown = new Set(
    PUBLISHED_STATEMENTS.flatMap(({ categories }) => categories.flatMap(({ pictograms }) => pictograms)),
  );
  expect([...shown].toSorted()).toEqual(Object.keys(PICTOGRAMS));
});
