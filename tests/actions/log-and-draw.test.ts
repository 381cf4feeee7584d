import { describe, expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { drawEntries } from '../../src/actions/draw-entries.ts';
import { logTreatment } from '../../src/actions/log-treatment.ts';
import type { TreatmentToLog } from '../../src/actions/treatment-to-log.ts';
import { decimal } from '../../src/core/exact-number.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { unitNamed } from '../../src/core/unit.ts';
import { Bench, randomFrom } from '../helpers/bench.ts';
import { date, dayOf, type Literal, type LiteralRow } from '../helpers/literal.ts';
import { snapshotOf } from '../helpers/snapshot.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

const today = dayOf(TODAY);
const serial = (text: string): number => serialOfDay(dayOf(text), 1900);

const MEND: TreatmentToLog = {
  job: '26-014',
  item: null,
  treatment: 'mend TEAR',
  extent: decimal('6'),
  date: today,
  minutes: decimal('75'),
  by: 'AK',
  notes: null,
  asUsed: [],
};

const ENTRY = { Entry: 'E-1', Date: date('2026-04-02'), Job: '26-014', Treatment: 'Mend tear', Extent: 6 };

function log(bench: Bench, request: Partial<TreatmentToLog> = {}) {
  return bench.do((snapshot, random) => logTreatment(snapshot, { ...MEND, ...request }, today, random));
}

function draw(bench: Bench, on = today) {
  return bench.do((snapshot, random) => drawEntries(snapshot, on, random));
}

function refusalOf(request: Partial<TreatmentToLog>, literal: Literal = STUDIO): string {
  const answer = logTreatment(snapshotOf(literal), { ...MEND, ...request }, today, randomFrom(1));
  return answer.ok ? 'not refused' : answer.message;
}

describe('logging a mend that spans two lots', () => {
  test('writes the entry, the movements under one posting, and the written cells of the lots', () => {
    const bench = new Bench(STUDIO);
    const { posting } = log(bench);
    const [entry, ...otherEntries] = bench.rows('TreatmentLog');
    expect(otherEntries).toEqual([]);
    expect(entry).toEqual({
      Entry: expect.stringMatching(/^E[2-9ACDEFGHJKLMNPQRTVWXY]{8}$/),
      Date: serial(TODAY),
      Job: '26-014',
      Treatment: 'Mend tear',
      Extent: 6,
      Minutes: 75,
      By: 'AK',
      Drawn: 'yes',
      'Drawn for': 6,
    });
    const shared = {
      Date: serial(TODAY),
      Kind: 'Use',
      Job: '26-014',
      Entry: entry?.['Entry'],
      'Lot is': 'assumed',
      By: 'AK',
      Posted: serial(TODAY),
      Posting: posting,
      Movement: expect.stringMatching(/^M[2-9ACDEFGHJKLMNPQRTVWXY]{8}$/),
    };
    expect(bench.rows('Movements')).toEqual([
      { ...shared, Lot: 'T-1', Quantity: 2, Unit: 'sheet', Cost: 9 },
      { ...shared, Lot: 'T-2', Quantity: 1, Unit: 'sheet', Cost: 4 },
      { ...shared, Lot: 'P-1', Quantity: 30, Unit: 'g', Cost: 0.38 },
      { ...shared, Lot: 'R-1', Quantity: 6, Unit: 'use', Cost: 2.4 },
    ]);
    expect(bench.rows('Tissue')).toMatchObject([
      { Left: 0, 'Left as written': 0, 'Good until': serial('2026-12-31'), Worth: 0 },
      { Left: 9, 'Left as written': 9, Worth: 36 },
    ]);
    expect(bench.rows('Tissue')[1]).not.toHaveProperty('Good until');
    expect(bench.rows('Paste')).toMatchObject([
      { Left: 170, 'Good until': serial('2026-04-06'), Worth: 2.12 },
      { Lot: 'W-1' },
    ]);
    expect(bench.rows('Paste')[1]).not.toHaveProperty('Left');
    expect(bench.rows('ReleasePaper')).toMatchObject([{ Left: 4.4, Worth: 17.6 }]);
  });

  test('what was written is what reading it again gives', () => {
    const bench = new Bench(STUDIO);
    const { drawing } = log(bench);
    const { stock, notices } = checkWorkbook(bench.workbook.snapshot(), today);
    for (const lot of stock.lots) {
      const account = drawing.ledger.accounts.get(
        [...drawing.ledger.accounts.keys()].find(({ name }) => name === lot.lot.name) as never,
      );
      expect(lot.left.toString()).toBe(
        (account?.postings.at(-1)?.left ?? lot.lot.record.quantity).toString(),
      );
    }
    expect(notices.filter(({ severity }) => severity !== 'note')).toEqual([]);
  });

  test('text of a person is written as text, whatever it begins with', () => {
    const bench = new Bench(STUDIO);
    log(bench, { notes: '=1+1', by: '+A' });
    const table = bench.workbook.snapshot().tables.find(({ name }) => name === 'TreatmentLog');
    const notes = table?.columns.find(({ header }) => header === 'Notes');
    expect([notes?.values[0], notes?.hasFormula(0)]).toEqual(['=1+1', false]);
    expect(bench.rows('Movements')[0]).toMatchObject({ By: '+A' });
  });

  test('the blank row of a fresh table is filled first', () => {
    const bench = new Bench(STUDIO);
    log(bench);
    const tables = bench.workbook.snapshot().tables;
    expect(tables.find(({ name }) => name === 'TreatmentLog')?.rowCount).toBe(1);
    expect(tables.find(({ name }) => name === 'Movements')?.rowCount).toBe(4);
  });

  test('days are written by the date system of the file', () => {
    const bench = new Bench({});
    const literal = snapshotOf(STUDIO, 1904);
    const answer = logTreatment(literal, MEND, today, bench.random);
    if (!answer.ok) throw new Error(answer.message);
    expect(
      answer.changes.flatMap((change) => (change.kind === 'append' ? [change.rows[0]?.['Date']] : [])),
    ).toEqual([
      { kind: 'day', day: today },
      { kind: 'day', day: today },
    ]);
  });

  test('amounts used, of a named lot, are confirmed and keep what was said', () => {
    const bench = new Bench(STUDIO);
    const asUsed = [
      { material: 'repair TISSUE 5', quantity: decimal('1.5'), unit: unitNamed('sheet'), lot: 't-2' },
    ];
    log(bench, { asUsed });
    expect(bench.rows('Movements').find(({ Lot }) => Lot === 'T-2')).toMatchObject({
      Quantity: 1.5,
      'Lot is': 'confirmed',
    });
    expect(bench.rows('TreatmentLog')[0]?.['Notes']).toMatch(/Used: Repair tissue 5=1\.5 sheet@T-2$/);
    expect(bench.rows('Movements').map(({ Lot }) => Lot)).not.toContain('T-1');
  });

  test('more decimals than can be written are rounded before anything is drawn', () => {
    const bench = new Bench(STUDIO);
    log(bench, { extent: decimal('0.33333333') });
    expect(bench.rows('TreatmentLog')).toMatchObject([{ Extent: 0.333333, 'Drawn for': 0.333333 }]);
    expect(bench.rows('Movements')[0]).toMatchObject({ Quantity: 0.166667 });
  });

  test('a shortfall draws what there is, and the entry is drawn in part', () => {
    const bench = new Bench(STUDIO);
    const { drawing } = log(bench, { extent: decimal('60') });
    expect(
      drawing.shortfalls.map(({ material, missing, unit }) => [material.name, missing.toString(), unit.name]),
    ).toEqual([
      ['Repair tissue 5', '18', 'sheet'],
      ['Wheat starch paste', '100', 'g'],
      ['Silicone release paper', '10', 'use'],
    ]);
    expect(bench.rows('TreatmentLog')).toMatchObject([{ Drawn: 'part', 'Drawn for': 60 }]);
  });

  test('an entry of a later day is kept and waits; nothing can have been used for it', () => {
    const bench = new Bench(STUDIO);
    const { posting, remarks } = log(bench, { date: dayOf('2026-04-04') });
    expect(posting).toBeNull();
    expect(remarks).toEqual(['The entry is dated 4 Apr 2026, after today, so it is kept and not drawn yet.']);
    expect(bench.rows('TreatmentLog')[0]).not.toHaveProperty('Drawn');
    expect(bench.rows('Movements')).toEqual([]);
    const asUsed = [
      { material: 'Repair tissue 5', quantity: decimal('1'), unit: unitNamed('sheet'), lot: null },
    ];
    expect(refusalOf({ date: dayOf('2026-04-04'), asUsed })).toMatch(
      /dated 4 Apr 2026, after today, so nothing is used for it yet/,
    );
  });

  test('work that is nobody’s goes to STUDIO, which needs no row in Jobs', () => {
    const bench = new Bench(STUDIO);
    log(bench, { job: 'studio', treatment: 'Examine' });
    expect(bench.rows('TreatmentLog')).toMatchObject([{ Job: 'STUDIO', Drawn: 'yes' }]);
  });
});

describe('what can’t be logged is refused with a sentence', () => {
  const used = (material: string, unit: string, lot: string | null = null) => ({
    asUsed: [{ material, quantity: decimal('1'), unit: unitNamed(unit), lot }],
  });
  test.each<[Partial<TreatmentToLog>, string]>([
    [{ job: '26-14' }, 'There is no job called 26-14 in Jobs. Did you mean 26-014 or 26-015?'],
    [{ job: 'nobody at all' }, 'There is no job called nobody at all in Jobs. Add it to Jobs first.'],
    [{ treatment: 'mend' }, 'There is no treatment called mend in Treatments. Did you mean Mend tear?'],
    [
      { job: '26-015', item: 'B' },
      'There is no item of job 26-015 called B in Items. Add it to Items first.',
    ],
    [
      used('Wheat paste', 'g'),
      'There is no material called Wheat paste in Materials. Did you mean Wheat starch paste?',
    ],
    [
      used('Repair tissue 5', 'sheet', 'T-7'),
      'There is no lot of Repair tissue 5 called T-7 in the stock tables. Did you mean T-1 or T-2?',
    ],
    [
      used('Repair tissue 5', 'sheet', 'P-1'),
      'Lot P-1 is a lot of Wheat starch paste, not of Repair tissue 5.',
    ],
    [
      used('Deionised water', 'ml'),
      'Deionised water is not counted, so no amount of it is drawn: leave out what was used of it.',
    ],
    [
      used('Wheat starch paste', 'ml'),
      'Nothing says how many g one ml of Wheat starch paste is: give the amount in g, or add to Materials the fact that links them.',
    ],
  ])('%#: $1', (request, message) => {
    expect(refusalOf(request)).toBe(message);
  });

  test('a table that is missing, can’t be read, or is filled by a formula', () => {
    const { Movements: _, ...without } = STUDIO;
    expect(refusalOf({}, without)).toMatch(
      /^This workbook has no table Movements that can be read, and this must be written there/,
    );
    expect(refusalOf({}, { ...STUDIO, TreatmentLog: { rows: [], without: ['Extent'] } })).toMatch(
      /no table TreatmentLog that can be read/,
    );
    expect(refusalOf({}, { ...STUDIO, Movements: { rows: [], without: ['Entry'] } })).toMatch(
      /^The table Movements has no column Entry, without which nobody could tell afterwards what was drawn/,
    );
    expect(refusalOf({}, { ...STUDIO, TreatmentLog: { rows: [], formulas: { Entry: '"E-"&ROW()' } } })).toBe(
      'A formula fills the column Entry of the table TreatmentLog, which must be written: delete the formula from that column.',
    );
  });

  test('tables of a newer version, or of one that can’t be told, are read and not written', () => {
    const newer = { ...STUDIO, Settings: [{ Setting: 'tables version', Value: 3 }] };
    expect(refusalOf({}, newer)).toBe(
      'This workbook has tables of version 3; this program knows version 2 and only reads them. Get the newer program to write to it.',
    );
    expect(checkWorkbook(snapshotOf(newer), today).stock.lots).toHaveLength(5);
    expect(refusalOf({}, { ...STUDIO, Settings: [{ Setting: 'tables version', Value: '2.1' }] })).toMatch(
      /^Which version the tables of this workbook have can't be told, so nothing is written: Settings!B2 \(tables version\) holds “2.1”/,
    );
  });
});

describe('drawing', () => {
  test('draws what was typed into the log, by date and entry, and names the rows that had no identifier', () => {
    const typed = [
      { Date: date('2026-04-02'), Job: '26-014', Treatment: 'Mend tear', Extent: 2 },
      { Entry: 'E-2', Date: date('2026-03-01'), Job: '26-014', Treatment: 'Mend tear', Extent: 2 },
      { Date: date('2026-04-20'), Job: '26-014', Treatment: 'Mend tear', Extent: 2 },
    ];
    const nameless = {
      Material: 'Repair tissue 5',
      Received: date('2026-03-10'),
      Quantity: 1,
      Unit: 'sheet',
    };
    const bench = new Bench({ ...STUDIO, TreatmentLog: typed, Tissue: [...STUDIO.Tissue, nameless] });
    const { drawing } = draw(bench);
    const entries = bench.rows('TreatmentLog');
    expect(entries).toMatchObject([{ Drawn: 'yes', 'Drawn for': 2 }, { Entry: 'E-2', Drawn: 'part' }, {}]);
    expect(entries.map(({ Entry }) => String(Entry).startsWith('E'))).toEqual([true, true, true]);
    expect(entries[2]).not.toHaveProperty('Drawn');
    expect(drawing.entries.map(({ entry }) => entry.name)).toEqual(['E-2', entries[0]?.['Entry']]);
    expect(bench.rows('Tissue')[2]?.['Lot']).toMatch(/^L[2-9ACDEFGHJKLMNPQRTVWXY]{8}$/);
    expect(bench.rows('Plan')[0]?.['Line']).toMatch(/^N/);
    expect(new Set(bench.rows('Movements').map(({ Posting }) => Posting)).size).toBe(1);
  });

  test('a second time it writes nothing: the file is the same to the byte', () => {
    const bench = new Bench({ ...STUDIO, TreatmentLog: [ENTRY, { ...ENTRY, Entry: 'E-2', Extent: 100 }] });
    draw(bench);
    const before = bench.bytes;
    const { drawing, posting, changes } = draw(bench);
    expect([drawing.movements, posting, changes]).toEqual([[], null, []]);
    expect(drawing.shortfalls).toHaveLength(3);
    expect(Buffer.compare(bench.bytes, before)).toBe(0);
  });

  test('after a lot has come in, the rest of a part is drawn', () => {
    const rows: LiteralRow[] = [{ ...STUDIO.Tissue[0] }];
    const bench = new Bench({ ...STUDIO, Tissue: rows, TreatmentLog: [ENTRY] });
    expect(draw(bench).drawing.shortfalls.map(({ missing }) => missing.toString())).toEqual(['1']);
    bench.do(() => ({
      ok: true,
      changes: [
        {
          kind: 'append',
          table: 'Tissue',
          rows: [
            {
              Material: { kind: 'text', text: 'Repair tissue 5' },
              Received: { kind: 'day', day: dayOf('2026-04-01') },
              Quantity: { kind: 'number', number: 5 },
              Unit: { kind: 'text', text: 'sheet' },
            },
          ],
        },
      ],
    }));
    expect(draw(bench).drawing.movements.map(({ quantity }) => quantity.toString())).toEqual(['1']);
    expect(bench.rows('TreatmentLog')).toMatchObject([{ Drawn: 'yes', 'Drawn for': 6 }]);
  });

  test('missing optional and written columns are neither written nor added', () => {
    const bench = new Bench({
      ...STUDIO,
      TreatmentLog: { rows: [ENTRY], without: ['Drawn', 'Drawn for', 'By'] },
      Tissue: { rows: STUDIO.Tissue, without: ['Left', 'Left as written', 'Good until', 'Worth'] },
      Movements: { rows: [], headers: ['Unit', 'Quantity', 'Lot', 'Kind', 'Date', 'Movement', 'Entry'] },
    });
    const headers = () =>
      bench.workbook
        .snapshot()
        .tables.map(({ name, columns }) => [name, columns.map(({ header }) => header)]);
    const before = headers();
    const { posting } = draw(bench);
    expect(headers()).toEqual(before);
    expect(posting).toBeNull();
    expect(bench.rows('Movements')).toHaveLength(4);
    expect(bench.rows('Tissue')).toHaveLength(2);
    expect(draw(bench).changes).toEqual([]);
  });

  test('a formula of the user’s in a written cell is never overwritten', () => {
    const bench = new Bench({
      ...STUDIO,
      TreatmentLog: [ENTRY],
      Tissue: { rows: STUDIO.Tissue, formulas: { Left: 'Tissue[[#This Row],[Quantity]]', Worth: '1+1' } },
    });
    draw(bench);
    const tissue = bench.workbook.snapshot().tables.find(({ name }) => name === 'Tissue');
    for (const header of ['Left', 'Worth']) {
      const column = tissue?.columns.find((each) => each.header === header);
      expect([column?.hasFormula(0), column?.hasFormula(1)]).toEqual([true, true]);
    }
    expect(bench.rows('Tissue')).toMatchObject([{ 'Left as written': 0 }, { 'Left as written': 9 }]);
  });

  test('a column that formulas fill is left to them in new rows', () => {
    const bench = new Bench({
      ...STUDIO,
      TreatmentLog: [ENTRY],
      Movements: { rows: [], formulas: { Cost: '0', Note: '"own"' } },
    });
    draw(bench);
    const cost = bench.workbook
      .snapshot()
      .tables.find(({ name }) => name === 'Movements')
      ?.columns.find(({ header }) => header === 'Cost');
    expect([0, 1, 2, 3].map((row) => cost?.hasFormula(row))).toEqual([true, true, true, true]);
  });

  test.each([1.5, 'about one'])('a Left typed over with %j is not lost by a posting', (typed) => {
    const tissue = [{ ...STUDIO.Tissue[0], Left: typed, 'Left as written': 2 }, STUDIO.Tissue[1]];
    const bench = new Bench({ ...STUDIO, Tissue: tissue, TreatmentLog: [ENTRY] });
    draw(bench);
    expect(bench.rows('Tissue')).toMatchObject([{ Left: typed }, { Left: 9, 'Left as written': 9 }]);
    if (typeof typed === 'number') expect(bench.rows('Tissue')[0]).toMatchObject({ 'Left as written': 2 });
  });

  test('a Left that is merely stale is brought up to date', () => {
    const tissue = [{ ...STUDIO.Tissue[0], Left: 1.75, 'Left as written': 1.75 }, STUDIO.Tissue[1]];
    const bench = new Bench({ ...STUDIO, Tissue: tissue, TreatmentLog: [ENTRY] });
    draw(bench);
    expect(bench.rows('Tissue')[0]).toMatchObject({ Left: 0, 'Left as written': 0 });
  });

  test('without entries there is nothing to do, and no table but Movements need be there', () => {
    const answer = drawEntries(snapshotOf({ Movements: [] }), today, randomFrom(1));
    expect(answer).toMatchObject({ ok: true, posting: null, changes: [], drawing: { entries: [] } });
  });
});
