/** How long the program may take to tell of a write after it was done, in milliseconds. */
const LATEST_NEWS = 1000;

/**
 * Knows which news are of our own writes. The program marks changes of cells with who made them; where it doesn't
 * (older versions, and tabs that come and go), the time and the tab tell.
 */
export class OwnWrites {
  #writing = 0;
  readonly #tabs = new Set<string>();

  /** Does a piece of writing; what is told while it lasts, and shortly after, is taken for ours. */
  async during<T>(work: () => Promise<T>): Promise<T> {
    this.#writing++;
    try {
      return await work();
    } finally {
      setTimeout(() => {
        this.#writing--;
      }, LATEST_NEWS);
    }
  }

  /** Remembers a tab that we added. */
  addTab(id: string): void {
    this.#tabs.add(id);
  }

  /** Whether an unmarked change on this machine is ours. */
  get isWriting(): boolean {
    return this.#writing > 0;
  }

  isOwnTab(id: string): boolean {
    return this.#tabs.has(id);
  }
}
