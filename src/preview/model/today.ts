import { signal } from '@preact/signals';

const MINUTE = 60_000;

/** The day that it is on the page: the sample studio has its own, an opened file the machine's. */
export class Today {
  readonly day = signal('');
  readonly #now: () => Date;
  readonly #listeners = new Set<(today: string) => void>();

  constructor(now: () => Date) {
    this.#now = now;
    this.day.value = this.machineDay();
  }

  /** The machine's day, YYYY-MM-DD. */
  machineDay(): string {
    const now = this.#now();
    return new Date(now.getTime() - now.getTimezoneOffset() * MINUTE).toISOString().slice(0, 10);
  }

  set(day: string): void {
    if (day === this.day.value) return;
    this.day.value = day;
    for (const listener of this.#listeners) listener(day);
  }

  onChange(listener: (today: string) => void): () => void {
    const own = (day: string): void => listener(day);
    this.#listeners.add(own);
    return () => void this.#listeners.delete(own);
  }
}
