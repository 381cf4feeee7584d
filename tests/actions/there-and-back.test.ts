import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkWorkbook } from '../../src/actions/check-workbook.ts';
import { drawEntries } from '../../src/actions/draw-entries.ts';
import { logTreatment } from '../../src/actions/log-treatment.ts';
import { undoPosting } from '../../src/actions/undo-posting.ts';
import { exact } from '../../src/core/exact-number.ts';
import { Bench } from '../helpers/bench.ts';
import { dayOf } from '../helpers/literal.ts';
import { STUDIO, TODAY } from '../helpers/studio.ts';

const today = dayOf(TODAY);
const NOTHING_ELSE = { item: null, minutes: null, by: null, notes: null, asUsed: [] };

const steps = fc.array(
  fc.oneof(
    fc.record({ log: fc.integer({ min: 1, max: 80_000 }).map((thousandths) => thousandths / 1000) }),
    fc.constant('draw' as const),
    fc.record({ undo: fc.nat(9) }),
  ),
  { minLength: 1, maxLength: 6 },
);

test('after any logging, drawing and undoing, written cells are right, and all undone leaves what was there', () => {
  fc.assert(
    fc.property(steps, (todo) => {
      const bench = new Bench(STUDIO);
      const open: string[] = [];
      const take = (posting: string | undefined): void => {
        if (posting === undefined) return;
        bench.do((snapshot, random) => undoPosting(snapshot, posting, today, random));
        open.splice(open.indexOf(posting), 1);
      };
      for (const step of todo) {
        if (step === 'draw') {
          const { posting } = bench.do((snapshot, random) => drawEntries(snapshot, today, random));
          if (posting !== null) open.push(posting);
        } else if ('log' in step) {
          const request = {
            job: '26-014',
            treatment: 'Mend tear',
            extent: exact(step.log),
            date: dayOf('2026-04-03'),
          };
          const { posting } = bench.do((snapshot, random) =>
            logTreatment(snapshot, { ...NOTHING_ELSE, ...request }, today, random),
          );
          if (posting !== null) open.push(posting);
        } else take(open[step.undo % Math.max(open.length, 1)]);
        const { stock, notices } = checkWorkbook(bench.workbook.snapshot(), today);
        expect(
          notices.filter(({ severity, code }) => severity === 'stop' || code === 'count-differs'),
        ).toEqual([]);
        for (const name of ['Tissue', 'Paste', 'ReleasePaper']) {
          for (const row of bench.rows(name)) {
            const figures = stock.lots.find(({ lot }) => lot.name === row['Lot']);
            if (row['Left'] === undefined) continue;
            expect(row['Left']).toBe(figures?.left.valueOf());
            expect(row['Left as written']).toBe(row['Left']);
            expect(Math.round(Number(row['Worth']) * 100)).toBe(Number(figures?.worth));
          }
        }
        const costs = new Map<unknown, number>();
        for (const row of bench.rows('Movements'))
          costs.set(row['Lot'], (costs.get(row['Lot']) ?? 0) + Math.round(Number(row['Cost']) * 100));
        for (const { lot, worth } of stock.lots) {
          if (!costs.has(lot.name)) continue;
          expect(Number(lot.record.cost) * 100 - (costs.get(lot.name) ?? 0)).toBe(Number(worth));
        }
      }
      for (const posting of open.toReversed()) take(posting);
      const { stock } = checkWorkbook(bench.workbook.snapshot(), today);
      expect(stock.lots.map(({ left, worth }) => [left.toString(), worth])).toEqual([
        ['2', 900n],
        ['10', 4000n],
        ['200', 250n],
        ['1', 1200n],
        ['5', 2000n],
      ]);
      // "part" stays on an entry for which there was nothing at all: no posting of it was there to be undone.
      for (const row of bench.rows('TreatmentLog')) expect(row['Drawn']).not.toBe('yes');
    }),
    { numRuns: 40 },
  );
});
