import { describe, expect, test } from 'vitest';
import { booksOf } from '../../src/actions/books.ts';
import { exact } from '../../src/core/exact-number.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { readNumber } from '../../src/pane/parts/number-text.ts';
import { presetFrom } from '../../src/pane/route.ts';
import { chosenWords, jobOf } from '../../src/pane/shell/chosen-words.ts';
import { rowsGoneWords } from '../../src/pane/shell/question-words.ts';
import { TABS_TO_SET_UP } from '../../src/pane/shell/set-up-words.ts';
import { purposeOf, signedNumber, whatOf } from '../../src/pane/stock/movement-words.ts';
import { firstSteps } from '../../src/pane/today/what-to-fill-in.ts';
import type { Chosen } from '../../src/session/session-state.ts';
import { RECORD_TABLES, SETTINGS_TABLE, STOCK_TABLES } from '../../src/workbook/known-tables.ts';
import { date } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO } from '../helpers/studio.ts';

const use = { Date: date('2026-04-02'), Kind: 'Use', Lot: 'P-1', Unit: 'g', Job: '26-014', Entry: 'E-1' };
const { ledger } = booksOf(
  snapshotOf({
    ...STUDIO,
    TreatmentLog: [
      { Entry: 'E-1', Date: date('2026-04-02'), Job: '26-014', Treatment: 'Mend tear', Extent: 1 },
    ],
    Movements: [
      { ...use, Movement: 'M-1', Quantity: 5, 'Lot is': 'assumed' },
      { ...use, Movement: 'M-2', Quantity: -5, Reverses: 'M-1' },
      { Movement: 'M-3', Date: date('2026-04-02'), Kind: 'Count', Lot: 'P-1', Quantity: -1, Unit: 'g' },
    ],
  }),
);
const { studio } = ledger;

describe('setting up', () => {
  test('names every table that there is, each once', () => {
    const named = TABS_TO_SET_UP.flatMap(({ tabs }) => tabs);
    const known = [...Object.values(RECORD_TABLES), ...STOCK_TABLES, SETTINGS_TABLE].map(({ name }) => name);
    expect(named.toSorted()).toEqual(known.toSorted());
  });

  test('leaves to fill in what is missing, and nothing else', () => {
    const titlesOf = (tables: object) =>
      firstSteps(booksOf(snapshotOf({ ...STUDIO, ...tables })).ledger.studio).map(({ title }) => title);
    expect(titlesOf({})).toEqual([]);
    expect(titlesOf({ Jobs: [] })).toEqual(['No jobs yet']);
    expect(titlesOf({ Tissue: [], Paste: [], ReleasePaper: [] })).toEqual(['No lots yet']);
  });
});

describe('what is chosen in the sheet', () => {
  const lot = studio.lots.find(({ name }) => name === 'P-1');
  const [entry] = studio.entries;
  const [plan] = studio.plan;
  const job = studio.jobs.find((each) => each.job === '26-014');
  if (lot === undefined || entry === undefined || plan === undefined || job === undefined) {
    throw new Error('the studio lacks a row');
  }
  const cases: readonly (readonly [Chosen, string, string | null, object | null])[] = [
    [{ kind: 'material', material: lot.material }, 'Wheat starch paste', null, null],
    [{ kind: 'lot', lot }, 'P-1, Wheat starch paste', null, null],
    [
      { kind: 'job', job },
      '26-014, Map',
      '26-014',
      { job: '26-014', item: null, treatment: null, extent: null },
    ],
    [
      { kind: 'entry', entry },
      'Mend tear, 26-014, 2 Apr 2026',
      '26-014',
      { job: '26-014', item: null, treatment: null, extent: null },
    ],
    [
      { kind: 'plan', plan },
      'Mend tear, 8 tear, 26-015',
      '26-015',
      { job: '26-015', item: 'A', treatment: 'Mend tear', extent: exact(8) },
    ],
  ];

  test.each(cases)('is called so, and starts a log entry so: %#', (chosen, name, jobName, preset) => {
    expect(chosenWords(chosen).name).toBe(name);
    expect(jobOf(chosen)).toBe(jobName);
    expect(presetFrom(chosen)).toEqual(preset);
  });

  test('is nothing where nothing is', () => {
    expect(presetFrom(null)).toBeNull();
  });
});

describe('a movement of a lot', () => {
  const lot = studio.lotsByKey.get('p-1');
  if (lot === undefined) throw new Error('the studio lacks lot P-1');
  const byName = new Map(accountIn(ledger, lot).postings.map((each) => [each.movement.name, each]));
  const posting = (name: string) => {
    const found = byName.get(name);
    if (found === undefined) throw new Error(`there is no movement ${name}`);
    return found;
  };

  test('says what it was, and whether it takes back or was taken back', () => {
    expect(whatOf(posting('M-1'))).toBe('Use, lot assumed, taken back later');
    expect(whatOf(posting('M-2'))).toBe('Use, taken back');
    expect(whatOf(posting('M-3'))).toBe('Count');
  });

  test('says what it was for, as far as that is known', () => {
    expect(purposeOf(posting('M-1'))).toBe('26-014 · E-1');
    expect(purposeOf(posting('M-3'))).toBe('');
  });

  test('shows its change with a sign', () => {
    expect(signedNumber(posting('M-1').movement.change)).toBe('−5');
    expect(signedNumber(posting('M-2').movement.change)).toBe('+5');
    expect(signedNumber(exact(0))).toBe('0');
    expect(signedNumber(exact(2.5), '')).toBe('2.5');
    expect(signedNumber(exact(-4), '')).toBe('−4');
  });
});

describe('rows that are gone', () => {
  test('are counted, one or several', () => {
    expect(rowsGoneWords({ movements: 3, entries: 1 })).toMatch(
      /^3 movements and 1 log entry that stood here are /,
    );
    expect(rowsGoneWords({ movements: 1, entries: 0 })).toMatch(
      /^1 movement that stood here is .* adds the same row /,
    );
    expect(rowsGoneWords({ movements: 0, entries: 2 })).toMatch(/^2 log entries that stood here are /);
  });
});

describe('a field for a number', () => {
  test.each(['12.5', ' 12.5 ', '+12.5', '1.25e1'])('reads "%s"', (text) => {
    expect(readNumber(text)).toEqual({ kind: 'number', number: exact(12.5) });
  });

  test('tells nothing from what can’t be read, and says what would be right', () => {
    expect(readNumber('  ')).toEqual({ kind: 'blank' });
    expect(readNumber('about 5')).toEqual({
      kind: 'not a number',
      message: 'about 5 can’t be read as a number: a plain number is right, such as 12.5.',
    });
    expect(readNumber('1,5')).toMatchObject({ message: expect.stringContaining('a point for the decimals') });
  });
});
