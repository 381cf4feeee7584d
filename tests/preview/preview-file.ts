import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { EditableFile } from '../../src/preview/model/editable-file.ts';
import { type CellView, FileLiveWorkbook } from '../../src/preview/model/file-live-workbook.ts';
import type { WorkbookBlueprint } from '../../src/workbook/blueprint.ts';
import type { LiveWorkbook, TabCell } from '../../src/workbook/live-workbook.ts';
import type { WorkbookSnapshot } from '../../src/workbook/port.ts';

/** A view that only remembers what was asked of it. */
export class RememberingView implements CellView {
  readonly shown: TabCell[] = [];
  readonly #listeners = new Set<(cell: TabCell) => void>();

  show(cell: TabCell): boolean {
    this.shown.push(cell);
    return cell.tab !== 'Absent';
  }

  onSelect(listener: (cell: TabCell) => void): () => void {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  }

  select(cell: TabCell): void {
    for (const listener of this.#listeners) listener(cell);
  }
}

/** A made workbook as grid and pane have it before them. */
export function preview(blueprint: WorkbookBlueprint) {
  return previewOf(createXlsx(blueprint));
}

export function previewOf(bytes: Uint8Array) {
  const file = new EditableFile(openXlsx(bytes));
  const view = new RememberingView();
  return { file, view, gate: new FileLiveWorkbook(file, view) };
}

/** What a gate reads; fails where it can't. */
export async function snapshotOf(gate: LiveWorkbook): Promise<WorkbookSnapshot> {
  const outcome = await gate.read();
  if (outcome.kind !== 'read') throw new Error(outcome.message);
  return outcome.snapshot;
}
