import { signal } from '@preact/signals';
import { editorText, typeInto } from '../model/edits.ts';
import type { Workbench } from '../model/workbench.ts';
import type { CellPosition } from './cell-position.ts';

/** Where a cell is being typed: in the cell itself, or in the line above the grid. */
export type EditPlace = 'cell' | 'line';

interface Edit {
  readonly tab: string;
  readonly cell: CellPosition;
  readonly place: EditPlace;
  readonly text: string;
}

/** The one cell that is being typed, if any. */
export class CellEditing {
  readonly current = signal<Edit | null>(null);
  readonly #bench: Workbench;

  constructor(bench: Workbench) {
    this.#bench = bench;
  }

  /** Begins to type in a cell: with what stands there, or over it. */
  begin(cell: CellPosition, place: EditPlace, over?: string): void {
    const text = over ?? editorText(this.#bench, cell);
    this.current.value = { tab: this.#bench.tab.value, cell, place, text };
  }

  put(text: string): void {
    const edit = this.current.value;
    if (edit) this.current.value = { ...edit, text };
  }

  /** Takes what was typed; false where it was refused, and the editor stays open with it. */
  commit(): boolean {
    const edit = this.current.value;
    if (!edit) return true;
    if (typeInto(this.#bench, edit.cell, edit.text).kind === 'refused') return false;
    this.current.value = null;
    return true;
  }

  /** Takes what was typed because the person went elsewhere; what is refused is let go, and said. */
  leave(): void {
    if (!this.commit()) this.current.value = null;
  }

  cancel(): void {
    this.current.value = null;
    // What was in the way is no longer, once it isn't typed any more.
    if (this.#bench.announcement.value.kind === 'problem') this.#bench.say('news', '');
  }
}
