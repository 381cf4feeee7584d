import type { Alternative, PlannedUse } from '../../actions/plan-treatment.ts';
import { findAmount } from '../../actions/treatment-to-log.ts';
import type { AmountUsed } from '../../core/as-used.ts';
import { type Exact, roundQuantity, sum, ZERO } from '../../core/exact-number.ts';
import { keyOf } from '../../core/identifier.ts';
import type { Material, Studio } from '../../core/studio.ts';
import type { Unit } from '../../core/unit.ts';
import { changedLines, type LineDraft, type LinesDraft, lineOf } from './draft.ts';
import { numberIn, type Problem } from './log-request.ts';

/** A part of a line that she can change. */
export type LinePart = 'amount' | 'lot' | 'second amount' | 'second lot';

/** A field of a line, told apart by the material that the line stands under. */
export type LineField = `${LinePart} of ${string}`;

/** What the rates take of one material, or nothing where she added it; with what she changed about it. */
export interface MaterialLine {
  readonly draft: LineDraft;
  /** What is taken: the alternative where she chose one. */
  readonly material: Material;
  readonly unit: Unit;
  /** What the rates take of it, in `unit`; null for a material that she added. */
  readonly byRates: Exact | null;
  readonly alternatives: readonly Alternative[];
  readonly isAdded: boolean;
}

/** What is taken from stock, material by material. */
export interface Uses {
  readonly uses: readonly PlannedUse[];
}

/** The lines of a treatment or a batch: one per material by the rates or the recipe, then those that she added. */
export function materialLines(draft: LinesDraft, byRates: Uses, studio: Studio): MaterialLine[] {
  const lines = byRates.uses.map((use): MaterialLine => {
    const own = lineOf(draft, use.material.name);
    const instead =
      own.instead === null
        ? undefined
        : use.alternatives.find(({ material }) => isNamed(material, own.instead));
    const { material, unit, quantity } = instead ?? use;
    return { draft: own, material, unit, byRates: quantity, alternatives: use.alternatives, isAdded: false };
  });
  const added = changedLines(draft).flatMap((own): MaterialLine[] => {
    const material = studio.materialsByKey.get(keyOf(own.of));
    if (material === undefined || byRates.uses.some((use) => isNamed(use.material, own.of))) return [];
    return [{ draft: own, material, unit: material.unit, byRates: null, alternatives: [], isAdded: true }];
  });
  return [...lines, ...added];
}

function isNamed(material: Material, name: string | null): boolean {
  return name !== null && keyOf(material.name) === keyOf(name);
}

/** Whether a line takes something else than the rates and the draw order say. */
export function isChanged({ draft }: MaterialLine): boolean {
  return draft.instead !== null || draft.amount !== null || draft.lot.trim() !== '' || draft.second !== null;
}

/** What was really used, as far as it differs from the rates, and what is wrong with how she said it. */
export interface ReadLines {
  readonly asUsed: readonly AmountUsed[];
  readonly problems: readonly Problem<LineField>[];
}

/** Reads the lines that she changed. A line with a fault in it is left as the rates have it, and told. */
export function readLines(lines: readonly MaterialLine[], studio: Studio): ReadLines {
  const read = lines.filter((line) => isChanged(line) || line.isAdded).map((line) => readLine(line, studio));
  return {
    asUsed: read.flatMap(({ asUsed, problems }) => (problems.length === 0 ? asUsed : [])),
    problems: read.flatMap(({ problems }) => problems),
  };
}

function readLine(line: MaterialLine, studio: Studio): ReadLines {
  const { draft, material, unit } = line;
  const missing = `Say how much of ${material.name} was used; 0 if none was.`;
  const part = (which: LinePart): LineField => `${which} of ${draft.of}`;
  const problems: Problem<LineField>[] = [];
  const amountOf = (which: LinePart, text: string | null): Exact => {
    if (text === null && line.byRates !== null) return line.byRates;
    const read = numberIn(part(which), text ?? '', missing, true);
    problems.push(...read.problems);
    return read.number ?? ZERO;
  };
  const used = (quantity: Exact, lot: string): AmountUsed => ({
    material: material.name,
    quantity,
    unit,
    lot: lot.trim() === '' ? null : lot.trim(),
  });
  const first = used(amountOf('amount', draft.amount), draft.lot);
  const second =
    draft.second === null ? null : used(amountOf('second amount', draft.second.amount), draft.second.lot);
  for (const [which, amount] of [['lot', first] as const, ['second lot', second] as const]) {
    if (amount === null) continue;
    const found = findAmount(studio, amount);
    if ('ok' in found) problems.push({ field: part(which), message: found.message, isBlank: false });
  }
  return { asUsed: second === null ? [first] : [first, second], problems };
}

/** What a plan takes for a line; null where it takes nothing of it. */
export function useFor(plan: Uses, { material }: MaterialLine): PlannedUse | null {
  return plan.uses.find((use) => use.material === material || isNamed(use.material, material.name)) ?? null;
}

/** What a line becomes when it is split: the first lot with what it gives, the rest from a second one. */
export function splitLine(line: MaterialLine, use: PlannedUse | null): Partial<LineDraft> {
  const [first, second] = use?.takes ?? [];
  const quantity = use?.quantity ?? line.byRates ?? ZERO;
  const taken = first?.quantity ?? quantity;
  return {
    amount: written(taken),
    lot: line.draft.lot.trim() === '' ? (first?.lot.name ?? '') : line.draft.lot,
    second: { amount: written(quantity.sub(taken)), lot: second?.lot.name ?? '' },
  };
}

/** What a line becomes when all of it is taken from the first lot again. */
export function joinLine(line: MaterialLine): Partial<LineDraft> {
  const amounts = [line.draft.amount, line.draft.second?.amount ?? null].map(
    (text) => numberIn('amount', text ?? '', null, true).number ?? ZERO,
  );
  const total = sum(amounts);
  const isByRates = line.byRates !== null && roundQuantity(line.byRates).equals(roundQuantity(total));
  return { amount: isByRates ? null : written(total), second: null };
}

function written(quantity: Exact): string {
  return roundQuantity(quantity).toString();
}

/** What stands in a line's field for the amount. */
export function amountText({ draft, byRates }: MaterialLine): string {
  return draft.amount ?? (byRates === null ? '' : written(byRates));
}

/** The materials that can be added: counted ones that no line is of yet, nor offers as an alternative. */
export function addableMaterials(lines: readonly MaterialLine[], studio: Studio): Material[] {
  const taken = new Set(
    lines.flatMap(({ material, alternatives }) => [material, ...alternatives.map((each) => each.material)]),
  );
  return studio.materials.filter((material) => material.counted && !taken.has(material));
}
