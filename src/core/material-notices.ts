import { addCalendarYears, type Day, spokenDay } from './day.ts';
import type { Exact } from './exact-number.ts';
import { keyOf } from './identifier.ts';
import type { Ledger } from './ledger.ts';
import { type Notice, notice } from './notice.ts';
import type { PlannedUse } from './planned-use.ts';
import { sheetLastRead, sheetReadAgainBy } from './safety-data-sheet.ts';
import type { Settings } from './settings.ts';
import type { MaterialFigures, Stock } from './stock.ts';
import type { Material } from './studio.ts';
import { countsPieces } from './unit.ts';
import { counted, spokenQuantity } from './wording.ts';

/** The notices about materials on a day: what is low, too much, short for a job, or long not looked at. */
export function materialNotices(ledger: Ledger, stock: Stock): Notice[] {
  const { settings } = ledger.studio;
  return stock.materials.flatMap((figures) => [
    ...low(figures),
    ...tooMuch(figures),
    ...shortForJob(figures),
    ...sdsOld(figures.material, settings, stock.today),
    ...offersOld(figures.material, settings, stock.today),
  ]);
}

function low({ material, reorder }: MaterialFigures): Notice[] {
  if (!reorder.isLow) return [];
  const { position, reorderPoint, suggestedOrder, wanted } = reorder;
  const there =
    position.compare(0) < 0
      ? `short by ${spokenQuantity(position.neg(), material.unit)} after what is planned and what the log has not drawn`
      : `${spokenQuantity(position, material.unit)} left over, with what is on order and after what is planned`;
  const message = `${material.name}: ${there}; order when down to ${spokenQuantity(reorderPoint, material.unit)}.`;
  const suggestion =
    suggestedOrder.compare(0) > 0
      ? `Suggested order: ${spokenQuantity(inWholePieces(suggestedOrder, material), material.unit)}.`
      : wanted.compare(0) > 0
        ? 'No whole pack would be used up before it goes off.'
        : 'None is being used up, so that nothing is suggested yet.';
  return [notice('low', material.record.material, material.record, 'Material', `${message} ${suggestion}`)];
}

/** Nobody orders a part of a sheet. */
function inWholePieces(quantity: Exact, { unit }: Material): Exact {
  return countsPieces(unit) ? quantity.ceil(0) : quantity;
}

function tooMuch({ material, left }: MaterialFigures): Notice[] {
  const { keepAtMost } = material.record;
  if (keepAtMost === null || left === null || left.compare(keepAtMost) <= 0) return [];
  const message =
    `${material.name}: ${spokenQuantity(left, material.unit)} is kept, more than the ${spokenQuantity(keepAtMost, material.unit)} ` +
    `that should be kept at most. Follow the safety data sheet and the local rules for storing it.`;
  return [notice('hazard', material.record.material, material.record, 'Keep at most', message)];
}

function shortForJob({ material, shortages }: MaterialFigures): Notice[] {
  const byJob = new Map<
    string,
    { readonly use: PlannedUse; readonly missing: string; readonly rows: number }
  >();
  for (const { use, missing } of shortages) {
    const key = keyOf(use.row.record.job);
    const before = byJob.get(key);
    if (before === undefined)
      byJob.set(key, { use, missing: spokenQuantity(missing, material.unit), rows: 1 });
    else byJob.set(key, { ...before, rows: before.rows + 1 });
  }
  return [...byJob.values()].map(({ use, missing, rows }) => {
    const job = use.row.job?.job ?? use.row.record.job;
    const more = rows === 1 ? '' : `, and for ${counted(rows - 1, 'later plan row')} as well`;
    const message =
      `${job}: ${use.row.treatment.name} on ${spokenDay(use.day)} needs ${spokenQuantity(use.quantity, material.unit)} of ${material.name}; ` +
      `missing on that day: ${missing}${more}.`;
    return notice('short-for-job', job, use.row.record, 'Extent', message);
  });
}

function sdsOld(material: Material, settings: Settings, today: Day): Notice[] {
  const last = sheetLastRead(material);
  if (last === null || sheetReadAgainBy(last, settings) >= today) return [];
  const { sdsYears } = settings;
  const message = `${material.name}: the safety data sheet was last checked on ${spokenDay(last)}, more than ${counted(sdsYears, 'year')} ago.`;
  return [notice('sds-old', material.record.material, material.record, 'SDS checked', message)];
}

function offersOld(material: Material, { offerYears }: Settings, today: Day): Notice[] {
  return material.offers.flatMap((offer) => {
    if (offer.checkedOn === null || addCalendarYears(offer.checkedOn, offerYears) >= today) return [];
    const message = `${material.name}: the price of ${offer.supplier} was last checked on ${spokenDay(offer.checkedOn)}.`;
    return [notice('offer-old', material.record.material, offer, 'Checked on', message)];
  });
}
