import type { Day } from '../core/day.ts';
import { keyOf, type Random } from '../core/identifier.ts';
import type { Ledger } from '../core/ledger.ts';
import type { Movement } from '../core/movement.ts';
import { movementsOfPosting, reverse } from '../core/undo.ts';
import { isUnmaking, isUnreceiving, lotsMadeBy, standingBesides, unmake } from '../core/unmake.ts';
import { quantityCell } from '../workbook/cell-write.ts';
import type { WorkbookSnapshot } from '../workbook/port.ts';
import { drawnCells } from '../workbook/written-cells.ts';
import { recentPostings } from './recent-postings.ts';
import { lotsReceivedBy, spokenPostings, undoReceipt } from './undo-receipt.ts';
import {
  movementChanges,
  newPosting,
  openMovements,
  type Refusal,
  refuse,
  type Written,
} from './writing-desk.ts';

const MOST_POSTINGS_NAMED = 5;

/**
 * Takes back all movements of a posting by reversing rows; the log entries stay, and can be drawn again. Of a lot that
 * was made, split off or received by it nothing is left afterwards; one that was touched since stands in the way.
 */
export function undoPosting(
  snapshot: WorkbookSnapshot,
  posting: string,
  today: Day,
  random: Random,
  by: string | null = null,
): Written | Refusal {
  const desk = openMovements(snapshot, today, random, ['Posting', 'Reverses']);
  if (!desk.ok) return desk;
  const { movementsTable } = desk;
  const found = movementsOfPosting(desk.ledger, posting);
  const came = found.length === 0 ? lotsReceivedBy(desk.ledger, posting) : [];
  if (came.length > 0) return undoReceipt(desk, posting, came, by);
  const reversed = new Set(
    [...desk.ledger.accounts.values()].flatMap(({ postings }) =>
      postings.flatMap(({ movement }) => movement.reverses ?? []),
    ),
  );
  const open = found.filter(
    (movement) => movement.reverses === null && !reversed.has(movement) && !isUnmaking(movement, found),
  );
  const obstacle = obstacleTo(desk.ledger, posting, found, open);
  if (obstacle !== null) return refuse(obstacle);

  const made = lotsMadeBy(desk.ledger, posting, open);
  const undoing = reverse(desk.ledger, open, today, desk.newIdentifier);
  const { ledger, movements: counts } = unmake(undoing.ledger, made, desk.newIdentifier);
  const movements = [...undoing.movements, ...counts];
  const name = newPosting(desk, movementsTable, movements);
  const marks = undoing.entries.flatMap(({ entry, drawn }) =>
    drawnCells(desk.tables, entry, drawn, quantityCell(drawn === null ? null : entry.record.drawnFor)),
  );
  const written = movementChanges(desk, movementsTable, ledger, movements, { name, by });
  return {
    ok: true,
    posting: name,
    drawing: {
      ledger,
      movements,
      entries: undoing.entries.map(({ entry, drawn }) => ({
        entry,
        drawn,
        extent: (drawn === null ? null : entry.record.drawnFor) ?? entry.record.extent,
      })),
      shortfalls: [],
    },
    changes: [...desk.changes, ...marks, ...written],
    remarks: [
      ...undoing.entries.map(({ entry, drawn }) =>
        drawn === 'part'
          ? `Entry ${entry.name} stays drawn in part, by another posting: draw draws the rest again.`
          : `Entry ${entry.name} stays in the treatment log and is not drawn any more: draw draws it again. ` +
            `If the treatment was not done, delete its row.`,
      ),
      ...made.map(({ lot }) => `The row of lot ${lot.name} stays where it is; nothing is left of it.`),
    ],
  };
}

function obstacleTo(
  ledger: Ledger,
  posting: string,
  found: readonly Movement[],
  open: readonly Movement[],
): string | null {
  if (found.length === 0) {
    const recent = recentPostings(ledger, MOST_POSTINGS_NAMED).map((each) => each.posting);
    const hint =
      recent.length === 0 ? 'No movement has a posting yet.' : `The latest are ${recent.join(', ')}.`;
    return `No movement has the posting ${posting}. ${hint}`;
  }
  if (found.every((movement) => movement.reverses !== null || isUnmaking(movement, found))) {
    const again = found.every(isUnreceiving)
      ? 'receive the order'
      : found.some(({ into }) => into !== null)
        ? 'make or open it'
        : 'draw the entries';
    return `Posting ${posting} took another one back itself, and a reversal is never reversed: ${again} again instead.`;
  }
  if (open.length === 0) return `Posting ${posting} has been taken back already.`;
  return undoObstacle(ledger, `posting ${posting}`, open) ?? touchedSince(ledger, posting, open);
}

/** What happened to a lot that a posting made or split off, and must be taken back before; null where nothing did. */
function touchedSince(ledger: Ledger, posting: string, open: readonly Movement[]): string | null {
  for (const { lot } of lotsMadeBy(ledger, posting, open)) {
    const standing = standingBesides(ledger, lot, open);
    if (standing.length === 0) continue;
    return `Lot ${lot.name}, which posting ${posting} made, has other movements: take back ${spokenPostings(standing)} first.`;
  }
  return null;
}

/**
 * Why movements can't be taken back by reversing rows; null where they can.
 * @param owner what they belong to, for the message: “posting P7…”
 */
export function undoObstacle(ledger: Ledger, owner: string, movements: readonly Movement[]): string | null {
  if (movements.some(({ kind }) => kind === 'Carried')) {
    return `What the Carried movements of ${owner} stand for is in the old workbook only: to have it back, go on from that one.`;
  }
  const nameless = movements.find(({ name }) => name === null);
  if (nameless !== undefined) {
    return `A movement of ${owner} has no identifier that a reversing row could name: fill in Movement first.`;
  }
  const twin = twinOf(ledger, movements);
  if (twin !== null) {
    return `Movement ${twin} stands in two rows, so a reversing row could mean either: give one of them another identifier.`;
  }
  return null;
}

/** The identifier of one of the movements that another row bears as well. */
function twinOf(ledger: Ledger, movements: readonly Movement[]): string | null {
  const times = new Map<string, number>();
  for (const { postings } of ledger.accounts.values()) {
    for (const { movement } of postings) {
      const key = keyOf(movement.name ?? '');
      times.set(key, (times.get(key) ?? 0) + 1);
    }
  }
  return movements.find(({ name }) => name !== null && (times.get(keyOf(name)) ?? 0) > 1)?.name ?? null;
}
