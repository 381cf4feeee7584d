import { describe, expect, it } from 'vitest';
import { logTreatment } from '../../src/actions/log-treatment.ts';
import { keepBooks } from '../../src/core/check.ts';
import { entryStatus } from '../../src/core/entry-needs.ts';
import { exact } from '../../src/core/exact-number.ts';
import { accountIn } from '../../src/core/ledger.ts';
import { openedOn } from '../../src/core/life.ts';
import { seededRandom } from '../../src/core/seeded-random.ts';
import { readWorkbook } from '../../src/workbook/read-workbook.ts';
import { lotCells } from '../../src/workbook/written-cells.ts';
import { checkSample, codesAndSubjects, dayOf, sampleSnapshot } from './sample-check.ts';

const TODAY = dayOf('2026-11-16');

describe('demo-studio.xlsx on 2026-11-16', () => {
  const snapshot = sampleSnapshot('demo-studio.xlsx');
  const reading = readWorkbook(snapshot);
  const { records } = reading;
  const { ledger } = keepBooks(records, reading.settings, reading.unreadable);

  it('is the size of a small studio after fourteen months', () => {
    const { materials, lots, jobs, items, entries, movements } = records;
    expect([materials, lots, jobs, items, entries, movements].map(({ length }) => length)).toEqual([
      40, 100, 30, 10, 300, 1000,
    ]);
    expect(new Set(items.map(({ job }) => job))).toEqual(new Set(['J-2034']));
    const days = movements.map(({ date }) => date);
    expect([Math.min(...days), Math.max(...days)]).toEqual([dayOf('2025-09-16'), TODAY]);
    expect(days).toEqual(days.toSorted((a, b) => a - b));
  });

  it('gives exactly the notices that it was made to give', () => {
    expect(codesAndSubjects(checkSample('demo-studio.xlsx', '2026-11-16'))).toEqual([
      'count-differs T-003',
      'entry-changed E-0288',
      'expired P-025',
      'expiring B-023',
      'expiring B-043',
      'expiring B-045',
      'expiring P-026',
      'expiring P-027',
      'expiring P-028',
      'low kozo paper 20 g',
      'low polyester web',
      'low wheat starch',
      'not-drawn E-0289',
      'not-drawn E-0296',
      'not-drawn E-0297',
      'not-drawn E-0298',
      'not-drawn E-0300',
      'overdrawn P-003',
      'sds-old calcium hydroxide',
      'short-for-job J-2032',
      'short-for-job J-2035',
      'short-for-job J-2037',
    ]);
  });

  it('holds in its written columns what its movements come to, but for the Left that was typed over', () => {
    expect(lotCells(reading.tables, ledger, ledger.studio.lots, TODAY)).toEqual([]);
    const typedOver = records.lots.filter(
      ({ left, leftAsWritten }) => !left?.equals(leftAsWritten ?? exact(-1)),
    );
    expect(typedOver.map(({ lot }) => lot)).toEqual(['T-003']);
  });

  it('says of each entry how far it is drawn', () => {
    for (const entry of ledger.studio.entries) {
      const drawn = { drawn: 'yes', part: 'part', 'not drawn': null, waiting: null }[
        entryStatus(ledger, entry, TODAY)
      ];
      expect(entry.record.drawn, entry.name).toBe(drawn);
    }
  });

  it('charges made lots what their ingredients cost', () => {
    const made = records.lots.filter(({ recipe }) => recipe !== null);
    expect(made.length).toBeGreaterThan(40);
    for (const { lot, cost } of made) {
      const ingredients = records.movements.filter(({ into }) => into === lot);
      expect(ingredients.every(({ kind }) => kind === 'Make')).toBe(true);
      const costs = ingredients.map((record) => {
        const account = [...ledger.accounts.values()].find((each) => each.lot.record.lot === record.lot);
        return account?.postings.find(({ movement }) => movement.name === record.movement)?.cost ?? 0n;
      });
      const coins = costs.reduce((total, each) => total + each, 0n);
      expect(cost?.mul(100).valueOf(), lot ?? '').toBe(Number(coins));
    }
  });

  it('has the worn, opened, set aside and ordered things that the pages show', () => {
    const { lots, materials } = checkSample('demo-studio.xlsx', '2026-11-16').stock;
    const figures = (name: string) => lots.find(({ lot }) => lot.name === name);
    const worn = figures('R-002');
    expect(worn?.left.mul(20).valueOf()).toBeLessThan(10);
    const buffer = ledger.studio.lotsByKey.get('b-023');
    expect(buffer && openedOn(accountIn(ledger, buffer), TODAY)).toBe(dayOf('2026-10-21'));
    expect(figures('T-009')?.state).toBe('Set aside');
    expect(figures('S-001')?.state).toBe('Discarded');
    expect(materials.find(({ material }) => material.name === 'kozo tissue 5 g')?.onOrder.valueOf()).toBe(10);
  });

  it('lets a mend of J-2031 span the last strip of one lot and the next lot', () => {
    const request = {
      job: 'J-2031',
      item: null,
      treatment: 'mending tears',
      extent: exact(40),
      date: TODAY,
      minutes: null,
      by: null,
      notes: null,
      asUsed: [],
    };
    const written = logTreatment(snapshot, request, TODAY, seededRandom(1));
    if (!written.ok) throw new Error(written.message);
    const { movements, shortfalls } = written.drawing;
    expect(
      movements.map(({ lot, quantity, unit }) => `${lot.name} ${quantity.valueOf()} ${unit.name}`),
    ).toEqual(['T-002 45 cm2', 'T-008 39 cm2', 'P-027 16.2 g']);
    expect(shortfalls).toEqual([]);
  });

  it('has what its user added: columns, a tab and a totals row of her own', () => {
    const tissue = snapshot.tables.find(({ name }) => name === 'Tissue');
    const own = tissue?.columns.find(({ header }) => header === 'Price of a unit');
    expect([own?.calculated, own?.hasFormula(0)]).toEqual([true, true]);
    expect(snapshot.tables.find(({ name }) => name === 'MyOverview')?.rowCount).toBe(4);
    expect(snapshot.tables.find(({ name }) => name === 'Quotes')?.rowCount).toBe(3);
  });
});
