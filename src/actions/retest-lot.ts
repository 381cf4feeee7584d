import { type Day, spokenDay } from '../core/day.ts';
import type { Exact } from '../core/exact-number.ts';
import type { Random } from '../core/identifier.ts';
import { accountIn } from '../core/ledger.ts';
import { lifeLimitsOn } from '../core/life.ts';
import { stateOn } from '../core/lot-account.ts';
import { noPh } from '../core/ph.ts';
import type { Lot } from '../core/studio.ts';
import { dayCell, quantityCell, textCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { type ChangedLot, changeLot } from './change-lot.ts';
import { findLot } from './find-lot.ts';
import type { LotCell } from './lot-cells.ts';
import { openDesk, type Refusal, refuse, type WritingDesk } from './writing-desk.ts';

/** A test of whether a lot is still good. */
export interface LotRetest {
  readonly lot: string;
  /** The last day on which it may be used, as the person who tested it found. */
  readonly until: Day;
  readonly on: Day;
  readonly by: string;
  /** What was measured; null leaves the lot's pH as it is. */
  readonly ph: Exact | null;
}

/**
 * Writes down that a lot was tested, by whom, and until when it was found good: that replaces what limited its life
 * before the test. Whether it is good is the judgement of the person who tested it.
 */
export function retestLot(
  snapshot: WorkbookSnapshot,
  request: LotRetest,
  today: Day,
  random: Random,
): ChangedLot | Refusal {
  const desk = openDesk(snapshot, today, random);
  if (!desk.ok) return desk;
  const lot = findLot(desk.ledger.studio, request.lot);
  if ('ok' in lot) return lot;
  const obstacle = obstacleTo(desk, lot, request);
  if (obstacle !== null) return refuse(obstacle);
  const { on, until, by, ph } = request;
  const cells: LotCell[] = [
    { header: 'Retested', cell: dayCell(on), needed: true },
    { header: 'Retested until', cell: dayCell(until), needed: true },
    { header: 'Retested by', cell: textCell(by.trim()), needed: true },
    ...(ph === null ? [] : [{ header: 'pH', cell: quantityCell(ph), needed: false }]),
  ];
  const changed = changeLot(snapshot, desk, lot, cells, { today, random });
  return changed.ok
    ? { ...changed, remarks: [...changed.remarks, ...afterwards(changed, request, today)] }
    : changed;
}

function obstacleTo(
  { ledger, today }: WritingDesk,
  lot: Lot,
  { on, until, by, ph }: LotRetest,
): string | null {
  if (by.trim() === '') return 'A test needs the name of the person who made it.';
  if (on > today)
    return `The day of the test is ${spokenDay(on)}, after today: give the day on which it was tested.`;
  if (on < lot.record.received) {
    return `Lot ${lot.name} came in only on ${spokenDay(lot.record.received)}: give that day or a later one for the test.`;
  }
  if (until < on) {
    return (
      `It was tested on ${spokenDay(on)}, and ${spokenDay(until)} is before that. If it is not good any more, ` +
      `throw it away or set it aside instead.`
    );
  }
  if (stateOn(accountIn(ledger, lot), today) === 'Discarded') return `Lot ${lot.name} is discarded.`;
  return ph === null ? null : noPh(ph);
}

/** Until when it is good now, and what ends that, which may be another limit than the test. */
function afterwards({ drawing, lot }: ChangedLot, { until }: LotRetest, today: Day): string[] {
  const first = lifeLimitsOn(accountIn(drawing.ledger, lot), today)[0];
  if (first === undefined) {
    return [
      `A date or the recipe of lot ${lot.name} can't be read, so nothing says yet until when it is good.`,
    ];
  }
  return first.day === until
    ? [`Lot ${lot.name} is good until ${spokenDay(until)} (${first.reason}).`]
    : [
        `Lot ${lot.name} is good until ${spokenDay(first.day)} only (${first.reason}): that begins after the test, ` +
          `and ends before ${spokenDay(until)}.`,
      ];
}
