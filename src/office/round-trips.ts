/** What one request or one answer may weigh: the program on the web takes 5 MB; the rest is room for error. */
export const ROUND_TRIP_BYTES = 4_000_000;

/** What a piece of work adds to a request or to its answer. */
export interface Weighed {
  readonly bytes: number;
}

/** Splits pieces of work, in their order, into round trips; one that is too heavy by itself goes alone. */
export function roundTrips<T extends Weighed>(pieces: readonly T[], limit = ROUND_TRIP_BYTES): T[][] {
  const trips: T[][] = [];
  let weight = 0;
  for (const piece of pieces) {
    const last = trips.at(-1);
    if (last !== undefined && weight + piece.bytes <= limit) {
      last.push(piece);
      weight += piece.bytes;
    } else {
      trips.push([piece]);
      weight = piece.bytes;
    }
  }
  return trips;
}

/** Does pieces of work one after another. */
export async function inTurn<T, R>(pieces: Iterable<T>, work: (piece: T) => Promise<R>): Promise<R[]> {
  const results: R[] = [];
  let last: Promise<void> = Promise.resolve();
  for (const piece of pieces) {
    last = last.then(async () => {
      results.push(await work(piece));
    });
  }
  await last;
  return results;
}

const encoder = new TextEncoder();

/** The bytes of a value as it goes to the program and back. */
export function bytesOf(value: unknown): number {
  return encoder.encode(JSON.stringify(value)).length;
}

/** The rows of a block that are weighed to estimate it. */
const SAMPLED_ROWS = 64;

/** The average bytes of a row, from rows spread evenly over a block. */
export function bytesPerRow(rows: readonly (readonly unknown[])[]): number {
  const step = Math.max(1, Math.floor(rows.length / SAMPLED_ROWS));
  const sample = rows.filter((_, row) => row % step === 0);
  return sample.length === 0 ? 0 : bytesOf(sample) / sample.length;
}
