const FNV_OFFSET = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/**
 * A seed from a name, so that the same material gives the same figures whatever else stands in the workbook.
 * Source: FNV-1a with 32 bits, Fowler, Noll and Vo, public domain; from memory.
 */
export function seedOf(name: string): number {
  let hash = FNV_OFFSET;
  for (let place = 0; place < name.length; place += 1) {
    hash = Math.imul(hash ^ name.charCodeAt(place), FNV_PRIME);
  }
  return hash >>> 0;
}
