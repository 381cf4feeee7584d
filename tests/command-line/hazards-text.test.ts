import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { hazardsJson, hazardsText } from '../../src/command-line/hazards-text.ts';
import { parseDay } from '../../src/core/day.ts';
import { keyOf } from '../../src/core/identifier.ts';
import { date } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';

const { ledger } = booksOf(
  snapshotOf({
    Materials: [
      {
        Material: 'Peroxide',
        Kind: 'Buffer',
        'Stock unit': 'ml',
        Hazards: 'H272 H318 H999; keep vented',
        'SDS checked': date('2024-02-10'),
        Disposal: 'Licensed collection only.',
      },
      { Material: 'Starch', Kind: 'Paste', 'Stock unit': 'g' },
    ],
    Settings: [{ Setting: 'sds years', Value: 2 }],
  }),
);

function materialOf(name: string) {
  const material = ledger.studio.materialsByKey.get(keyOf(name));
  if (material === undefined) throw new Error(`no material ${name}`);
  return material;
}

function textOf(name: string, today: string): string[] {
  const day = parseDay(today);
  if (day === null) throw new Error(`${today} is no day`);
  const terminal = { width: 120, color: false, print: () => undefined, printError: () => undefined };
  return hazardsText(materialOf(name), ledger.studio.settings, day, terminal);
}

describe('the hazards of a material', () => {
  test('as text: each code in full, words, pictograms, the table, disposal, the sheet, and whose word counts', () => {
    const lines = textOf('peroxide', '2026-02-10');
    expect(lines.slice(0, 7)).toEqual([
      'Hazards',
      '  H272: May intensify fire; oxidizer [Danger or Warning, by category; flame over circle (GHS03)]',
      '  H318: Causes serious eye damage [Danger; corrosion (GHS05)]',
      '  H999: not in the table; look it up in the safety data sheet.',
      '  keep vented',
      'Pictogram flame over circle (GHS03): oxidizers.',
      'Pictogram corrosion (GHS05): skin corrosion or burns, eye damage, corrosive to metals.',
    ]);
    const rest = lines.slice(7).join(' ');
    expect(rest).toContain('Globally Harmonized System');
    expect(rest).toContain('Disposal: Licensed collection only.');
    expect(rest).toContain('last read on 10 Feb 2024; read it again by 10 Feb 2026.');
    expect(rest).toMatch(/local codes and to licensed practice\.$/);
    expect(textOf('peroxide', '2026-02-11').join(' ')).toContain(
      'it should have been read again by 10 Feb 2026.',
    );
  });

  test('are none given, which says nothing', () => {
    expect(textOf('starch', '2026-02-10')).toEqual([
      'Hazards',
      'None are given, which doesn’t mean that there are none.',
      'No day is given on which the safety data sheet was last read.',
      'Read the supplier’s safety data sheet before use, and keep to it, to your local codes and to licensed practice.',
    ]);
  });

  test('as JSON', () => {
    expect(hazardsJson(materialOf('peroxide'))).toEqual([
      {
        code: 'H272',
        sentence: 'May intensify fire; oxidizer',
        signal: 'Danger or Warning, by category',
        pictograms: ['GHS03'],
      },
      { code: 'H318', sentence: 'Causes serious eye damage', signal: 'Danger', pictograms: ['GHS05'] },
      { code: 'H999', sentence: null, signal: null, pictograms: [] },
    ]);
    expect(hazardsJson(materialOf('starch'))).toEqual([]);
  });
});
