import { showIn } from './cell-calls.ts';

// The comments of these functions are what a person reads in the spreadsheet: functions.json is made from them.
// A unit in square brackets may be left out, whatever its type says; it then arrives as null.

/**
 * What is left of a material in all its lots, expired ones and those set aside too.
 * @customfunction LEFT
 * @streaming
 * @param material The material's name, as it stands in Materials.
 * @param [unit] The unit of the answer, such as g or sheet. Left out: the material's stock unit.
 * @param invocation
 */
export function left(
  material: string,
  unit: string,
  invocation: CustomFunctions.StreamingInvocation<number>,
): void {
  showIn(invocation, 'LEFT', [material, unit]);
}

/**
 * What may be used of a material today: the lots that have not gone off and are not set aside.
 * @customfunction USABLE
 * @streaming
 * @param material The material's name, as it stands in Materials.
 * @param [unit] The unit of the answer, such as g or sheet. Left out: the material's stock unit.
 * @param invocation
 */
export function usable(
  material: string,
  unit: string,
  invocation: CustomFunctions.StreamingInvocation<number>,
): void {
  showIn(invocation, 'USABLE', [material, unit]);
}

/**
 * The last day on which a lot may be used. Format the cell as a date.
 * @customfunction GOODUNTIL
 * @streaming
 * @param lot The lot's identifier, as it stands in its stock table.
 * @param invocation
 */
export function goodUntil(lot: string, invocation: CustomFunctions.StreamingInvocation<number>): void {
  showIn(invocation, 'GOODUNTIL', [lot]);
}

/**
 * What a quantity of a material costs today, before markup and tax, as a quote would cost it: from the lots that would be used first, the rest at the lowest price on offer (or all at that price, where the settings say so).
 * @customfunction COST
 * @streaming
 * @param material The material's name, as it stands in Materials.
 * @param quantity How much of it, such as 2.5.
 * @param [unit] The quantity's unit, such as g or sheet. Left out: the material's stock unit.
 * @param invocation
 */
export function cost(
  material: string,
  quantity: number,
  unit: string,
  invocation: CustomFunctions.StreamingInvocation<number>,
): void {
  showIn(invocation, 'COST', [material, quantity, unit]);
}

/**
 * For how many days what is usable of a material lasts, at its mean use per day over the last year.
 * @customfunction COVER
 * @streaming
 * @param material The material's name, as it stands in Materials.
 * @param invocation
 */
export function cover(material: string, invocation: CustomFunctions.StreamingInvocation<number>): void {
  showIn(invocation, 'COVER', [material]);
}

/**
 * The stock of a material at which to order it again.
 * @customfunction ORDERAT
 * @streaming
 * @param material The material's name, as it stands in Materials.
 * @param [unit] The unit of the answer, such as g or sheet. Left out: the material's stock unit.
 * @param invocation
 */
export function orderAt(
  material: string,
  unit: string,
  invocation: CustomFunctions.StreamingInvocation<number>,
): void {
  showIn(invocation, 'ORDERAT', [material, unit]);
}
