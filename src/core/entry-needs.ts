import type { Day } from './day.ts';
import type { Need } from './draw-order.ts';
import { type Exact, ONE, percentOf, roundQuantity, sum, ZERO } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import { type Ledger, standingFor } from './ledger.ts';
import type { Posting } from './lot-account.ts';
import { isConvertible } from './missing-conversions.ts';
import { compareText } from './notice.ts';
import type { Entry, Material, UsageRate } from './studio.ts';
import type { Unit } from './unit.ts';

/** How far a log entry has been drawn down, as the ledger tells. */
export type EntryStatus = 'waiting' | 'not drawn' | 'part' | 'drawn';

/** Steps of the sixth decimal by which two written quantities may differ and still mean the same. */
const TOLERANCE = ONE.div(1_000_000);

/** Whether a rate takes whole units per entry: as it says, and uses always unless it says no. */
export function takesWhole({ record: { whole, unit } }: UsageRate): boolean {
  return whole ?? unit.dimension === 'use';
}

/**
 * What a rate takes for an extent: (rate × extent + fixed) × (1 + waste ÷ 100), in the rate's unit,
 * rounded up to whole units where it takes whole ones.
 */
export function rateQuantity(rate: UsageRate, extent: Exact, withFixed: boolean): Exact {
  const { quantityPerExtent, fixedQuantity, waste } = rate.record;
  const fixed = withFixed ? (fixedQuantity ?? ZERO) : ZERO;
  const net = quantityPerExtent.mul(extent).add(fixed);
  const quantity = roundQuantity(net.add(percentOf(net, waste ?? ZERO)));
  return takesWhole(rate) ? quantity.ceil(0) : quantity;
}

/**
 * The rates of a treatment that apply: those without a choice, and one of each group of alternatives.
 * @param isChosen tells the alternative that was chosen; where none was, the first is taken
 */
export function ratesInForce(
  rates: readonly UsageRate[],
  isChosen: (rate: UsageRate) => boolean,
): UsageRate[] {
  const chosen = new Map<string, UsageRate>();
  for (const rate of rates) {
    const { choice } = rate.record;
    if (choice === null) continue;
    const before = chosen.get(keyOf(choice));
    if (before === undefined || (isChosen(rate) && !isChosen(before))) chosen.set(keyOf(choice), rate);
  }
  return rates
    .filter(({ record }) => record.choice === null)
    .concat([...chosen.values()])
    .sort((a, b) => rates.indexOf(a) - rates.indexOf(b));
}

/** How far an entry is drawn. One with nothing countable to take, or nothing that converts, is drawn. */
export function entryStatus(ledger: Ledger, entry: Entry, today: Day): EntryStatus {
  if (entry.record.date > today) return 'waiting';
  if (standing(ledger, entry, today).length > 0) {
    return isPart(ledger, entry) ? 'part' : 'drawn';
  }
  return entryNeeds(ledger, entry, today).some(({ quantity }) => quantity.compare(0) > 0)
    ? 'not drawn'
    : 'drawn';
}

function isPart(ledger: Ledger, entry: Entry): boolean {
  return entry.key !== null && ledger.partEntries.has(entry.key);
}

function standing(ledger: Ledger, entry: Entry, today: Day): Posting[] {
  return entry.key === null ? [] : standingFor(ledger, entry.key, today);
}

/** The extent that an entry is drawn for: what it was drawn for in part, else what it says now. */
export function extentDrawn(ledger: Ledger, entry: Entry, today: Day): Exact {
  const { drawnFor, extent } = entry.record;
  return drawnFor !== null && standing(ledger, entry, today).length > 0 ? drawnFor : extent;
}

/**
 * What an entry takes of each countable material by its treatment's rates; rates that lead to no lot's unit are
 * left out. Amounts that a person gave stand in for the rates of their material, also of one that no rate names; an
 * alternative is chosen by giving an amount of it, or by having been drawn before. Lots that she named come first.
 */
export function entryNeeds(ledger: Ledger, entry: Entry, today: Day): Need[] {
  const extent = extentDrawn(ledger, entry, today);
  const given = new Set(entry.asUsed.map(({ material }) => material));
  const byRate = ratesOfEntry(ledger, entry, today)
    .filter((rate) => isCountable(ledger, rate) && !given.has(rate.material))
    .map((rate) => ({
      material: rate.material,
      quantity: rateQuantity(rate, extent, takesFixed(ledger, entry, rate, today)),
      unit: rate.record.unit,
      whole: takesWhole(rate),
      lot: null,
    }));
  const byPerson = entry.asUsed
    .filter(({ material }) => material.counted)
    .map((each) => ({ ...each, whole: false }))
    .sort((a, b) => Number(a.lot === null) - Number(b.lot === null));
  return [...byRate, ...byPerson];
}

function ratesOfEntry(ledger: Ledger, entry: Entry, today: Day): UsageRate[] {
  const given = new Set(entry.asUsed.map(({ material }) => material));
  const used = new Set(standing(ledger, entry, today).map(({ movement }) => movement.lot.material));
  return ratesInForce(entry.treatment.rates, ({ material }) => given.has(material) || used.has(material));
}

/** Whether a rate can draw anything: its material is counted, and its unit leads to some lot's. */
export function isCountable(ledger: Ledger, rate: UsageRate): boolean {
  return rate.material.counted && isConvertible(rate, ledger.studio.lotsOfMaterial.get(rate.material) ?? []);
}

/** What stands drawn of a material for an entry, by its Use rows, in the given unit. */
function drawnOf(ledger: Ledger, entry: Entry, material: Material, unit: Unit, today: Day): Exact {
  let total = ZERO;
  for (const { movement } of standing(ledger, entry, today)) {
    if (movement.kind !== 'Use' || movement.lot.material !== material) continue;
    const factor = movement.lot.converter.factor(movement.unit, unit);
    if (factor !== null) total = total.add(movement.quantity.mul(factor));
  }
  return total;
}

/**
 * Whether an entry takes a rate's fixed quantity: always if that is per entry; if it is per day or per job, where
 * the entry has it drawn already, or where no other has and it is the first that is still to be drawn. One drawn
 * before that in whole units, with room for the fixed quantity, has it.
 */
export function takesFixed(ledger: Ledger, entry: Entry, rate: UsageRate, today: Day): boolean {
  if (rate.record.fixedQuantity === null || rate.fixedPer === 'entry') return true;
  const sharing = (ledger.studio.entriesOfTreatment.get(entry.treatment) ?? [])
    .filter((other) => other === entry || sharesFixed(entry, other, rate, today))
    .filter((other) => other === entry || ratesOfEntry(ledger, other, today).includes(rate))
    .sort(compareEntries);
  const holder = sharing.find((other) => fixedIn(ledger, other, rate, today) === 'drawn');
  const taker =
    holder ??
    sharing.find(
      (other) =>
        isStillToDraw(ledger, other, today) || fixedIn(ledger, other, rate, today) === 'not told apart',
    );
  return taker === entry;
}

function sharesFixed(entry: Entry, other: Entry, rate: UsageRate, today: Day): boolean {
  if (other.record.date > today || !isDrawable(other)) return false;
  return rate.fixedPer === 'day'
    ? other.record.date === entry.record.date
    : keyOf(other.record.job) === keyOf(entry.record.job);
}

/**
 * Whether an entry has a rate's fixed quantity drawn: more of the material than the extent accounts for by all the
 * entry's rates for it. Where whole units leave no difference, that can't be told apart.
 */
function fixedIn(
  ledger: Ledger,
  entry: Entry,
  rate: UsageRate,
  today: Day,
): 'drawn' | 'not told apart' | 'not drawn' {
  const { unit } = rate.record;
  const extent = extentDrawn(ledger, entry, today);
  const drawn = drawnOf(ledger, entry, rate.material, unit, today);
  if (drawn.compare(0) <= 0) return 'not drawn';
  const byOthers = ratesOfEntry(ledger, entry, today)
    .filter((other) => other !== rate && other.material === rate.material)
    .map((other) =>
      rateQuantity(other, extent, other.fixedPer === 'entry').mul(
        rate.material.converter.factor(other.record.unit, unit) ?? ZERO,
      ),
    );
  const rest = drawn.sub(sum(byOthers));
  if (rest.sub(rateQuantity(rate, extent, false)).compare(TOLERANCE) > 0) return 'drawn';
  const isAll = rest.add(TOLERANCE).compare(rateQuantity(rate, extent, true)) >= 0;
  return isAll ? 'not told apart' : 'not drawn';
}

/** Whether an entry can still be drawn; one that has no identifier yet gets one before, one with another's can't. */
function isStillToDraw(ledger: Ledger, entry: Entry, today: Day): boolean {
  if (!isDrawable(entry)) return false;
  return standing(ledger, entry, today).length === 0 || isPart(ledger, entry);
}

/** Whether an entry can be drawn at all: not one that bears the identifier of an earlier row. */
export function isDrawable({ key, record }: Entry): boolean {
  return key !== null || record.entry === null;
}

/** The order in which entries are drawn: by date, then by identifier. */
export function compareEntries(a: Entry, b: Entry): number {
  return (
    a.record.date - b.record.date ||
    compareText(a.name, b.name) ||
    a.record.place.sheetRow - b.record.place.sheetRow
  );
}
