import { type CarryOver, carryOver } from '../../../src/core/carry-over.ts';
import type { Day } from '../../../src/core/day.ts';
import type { Ledger } from '../../../src/core/ledger.ts';
import type { Records } from '../../../src/core/records.ts';
import { written } from './random-studio.ts';
import { ledgerOf, numbered } from './studio-of.ts';

/** What a workbook's records are once they are carried over, and what carrying over did. */
export interface Carried {
  readonly records: Records;
  readonly answer: CarryOver;
}

/** Carries records over as of a day, every row of them readable and none in doubt. */
export function carriedOver(
  records: Records,
  day: Day,
  file = 'old.xlsx',
  ledger: Ledger = ledgerOf(records),
): Carried {
  const answer = carryOver(ledger, day, {
    file,
    newIdentifier: numbered(`-${day}`),
    isInDoubt: () => false,
    movements: records.movements,
    canWriteOpened: () => true,
  });
  const gone = new Set(answer.lots.flatMap(({ folded }) => folded.map(({ record }) => record)));
  const openedOf = new Map(answer.lots.map(({ lot, opened }) => [lot.record, opened]));
  const entries = new Set(answer.entries.map(({ record }) => record));
  return {
    answer,
    records: {
      ...records,
      lots: records.lots.map((lot) => ({ ...lot, opened: openedOf.get(lot) ?? lot.opened })),
      movements: [
        ...records.movements.filter((row) => !gone.has(row)),
        ...written(answer.lots.map(({ carried }) => carried)),
      ],
      entries: records.entries.filter((row) => !entries.has(row)),
    },
  };
}
