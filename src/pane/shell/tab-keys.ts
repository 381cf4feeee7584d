/**
 * Which tab a key goes to: the arrows go round, Home and End to the ends, a letter to the next tab that begins with
 * it.
 * @returns null where the key means nothing here
 */
export function tabAfterKey(labels: readonly string[], current: number, key: string): number | null {
  const count = labels.length;
  switch (key) {
    case 'ArrowRight':
      return (current + 1) % count;
    case 'ArrowLeft':
      return (current - 1 + count) % count;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default: {
      const letter = key.toLowerCase();
      if (letter.length !== 1 || letter.trim() === '') return null;
      const order = labels.map((_, step) => (current + 1 + step) % count);
      return order.find((place) => labels[place]?.toLowerCase().startsWith(letter)) ?? null;
    }
  }
}
