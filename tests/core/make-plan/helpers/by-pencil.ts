/** What making such lots on day 0, 1, 2 … costs: set-ups, and holding what is left at the end of each day. */
export function lotsByPencil(
  needs: readonly number[],
  lots: readonly number[],
  setUps: readonly number[],
  holding: number,
): number {
  let stock = 0;
  let cost = 0;
  for (const [day, need] of needs.entries()) {
    const lot = lots[day] ?? 0;
    if (lot > 0) cost += setUps[day] ?? 0;
    stock += lot - need;
    if (stock < 0) throw new Error(`day ${day} is short`);
    cost += stock * holding;
  }
  return cost;
}
