import type { Day } from './day.ts';
import { keyOf } from './identifier.ts';
import { accountOf, isReversedBy, type LotAccount, type Posting } from './lot-account.ts';
import type { Coins } from './money.ts';
import type { Movement } from './movement.ts';
import type { Lot, Material, Studio } from './studio.ts';

/**
 * All lots with their movements. It never changes: posting gives a new ledger that shares all untouched accounts
 * with the old one, so that one posting among 100,000 movements costs only the lots that it touches.
 */
export interface Ledger {
  readonly studio: Studio;
  readonly accounts: ReadonlyMap<Lot, LotAccount>;
  /** The lots that a log entry has movements on, by the key of the entry. */
  readonly lotsOfEntry: ReadonlyMap<string, ReadonlySet<Lot>>;
  /** The keys of entries that were drawn in part, for want of stock. */
  readonly partEntries: ReadonlySet<string>;
}

/** The ledger of a studio: every lot with its movements, in whatever order these are given. */
export function openLedger(studio: Studio, movements: readonly Movement[]): Ledger {
  const byLot = new Map<Lot, Movement[]>(studio.lots.map((lot) => [lot, []]));
  for (const movement of movements) byLot.get(movement.lot)?.push(movement);
  const { currency } = studio.settings;
  return {
    studio,
    accounts: new Map([...byLot].map(([lot, own]) => [lot, accountOf(lot, own, currency)])),
    lotsOfEntry: addEntries(new Map(), movements),
    partEntries: new Set(
      studio.entries.flatMap(({ key, record }) => (key !== null && isPart(record.drawn) ? [key] : [])),
    ),
  };
}

function isPart(drawn: string | null): boolean {
  return drawn !== null && keyOf(drawn) === 'part';
}

/** The ledger with an entry marked as drawn in part, or no longer so. */
export function markPart(ledger: Ledger, entryKey: string, part: boolean): Ledger {
  if (ledger.partEntries.has(entryKey) === part) return ledger;
  const partEntries = new Set(ledger.partEntries);
  if (part) partEntries.add(entryKey);
  else partEntries.delete(entryKey);
  return { ...ledger, partEntries };
}

/** The ledger with further movements in it. */
export function post(ledger: Ledger, movements: readonly Movement[]): Ledger {
  if (movements.length === 0) return ledger;
  const accounts = new Map(ledger.accounts);
  for (const lot of new Set(movements.map((movement) => movement.lot))) {
    const before = accountIn(ledger, lot).postings.map((posting) => posting.movement);
    const added = movements.filter((movement) => movement.lot === lot);
    accounts.set(lot, accountOf(lot, [...before, ...added], ledger.studio.settings.currency));
  }
  return { ...ledger, accounts, lotsOfEntry: addEntries(new Map(ledger.lotsOfEntry), movements) };
}

function addEntries(
  lotsOfEntry: Map<string, ReadonlySet<Lot>>,
  movements: readonly Movement[],
): ReadonlyMap<string, ReadonlySet<Lot>> {
  for (const { entry, lot } of movements) {
    if (entry === null) continue;
    const known = lotsOfEntry.get(keyOf(entry));
    if (known?.has(lot) !== true) lotsOfEntry.set(keyOf(entry), new Set([...(known ?? []), lot]));
  }
  return lotsOfEntry;
}

/** The account of a lot of the studio. */
export function accountIn(ledger: Ledger, lot: Lot): LotAccount {
  const account = ledger.accounts.get(lot);
  if (account === undefined) throw new Error(`lot ${lot.name} is not in this ledger`);
  return account;
}

/** What a movement of the ledger costs; null for a lot without a cost. */
export function costIn(ledger: Ledger, movement: Movement): Coins | null {
  const { postings } = accountIn(ledger, movement.lot);
  return postings.find((posting) => posting.movement === movement)?.cost ?? null;
}

/** The accounts of a material's lots. */
export function accountsOf(ledger: Ledger, material: Material): LotAccount[] {
  return (ledger.studio.lotsOfMaterial.get(material) ?? []).map((lot) => accountIn(ledger, lot));
}

/** What stands for a log entry on a day: its movements that no row has reversed by then. */
export function standingFor(ledger: Ledger, entryKey: string, day: Day): Posting[] {
  return [...(ledger.lotsOfEntry.get(entryKey) ?? [])]
    .flatMap((lot) => accountIn(ledger, lot).postings)
    .filter(
      (posting) =>
        posting.movement.entry !== null &&
        keyOf(posting.movement.entry) === entryKey &&
        posting.movement.reverses === null &&
        !isReversedBy(posting, day),
    );
}
