import { refuseOtherContainers, refuseOtherPackages } from './file-kind.ts';
import { damaged } from './file-refused.ts';
import { PackageParts } from './package-parts.ts';
import { readSharedStrings } from './shared-strings.ts';
import { blankGrid } from './sheet-grid.ts';
import { type BodyToRead, readSheet } from './sheet-read.ts';
import { DerivedStyles, NO_STYLES, readStyles } from './styles-part.ts';
import { firstBodyRow, lastBodyRow, readTablePart, type TablePart } from './table-part.ts';
import { readWorkbookPart, type Tab } from './workbook-part.ts';
import { type PartNames, type SheetState, type TableState, WorkbookState } from './workbook-state.ts';

/** Reads a workbook file: everything that its tables hold, the rest only as far as needed to keep it. */
export function openWorkbookState(bytes: Uint8Array): { state: WorkbookState; macroEnabled: boolean } {
  refuseOtherContainers(bytes);
  const parts = PackageParts.open(bytes);
  const workbook = parts.relationships('').find((each) => each.kind === 'officeDocument')?.target;
  const macroEnabled = refuseOtherPackages(parts, workbook);
  if (workbook === undefined) throw damaged('its main part is not named');
  const relationships = parts.relationships(workbook);
  const partOf = (kind: string): string | null =>
    relationships.find((each) => each.kind === kind && !each.external)?.target ?? null;
  const names: PartNames = {
    workbook,
    strings: partOf('sharedStrings'),
    styles: partOf('styles'),
    calculationChain: partOf('calcChain'),
  };
  const { dateSystem, tabs } = readWorkbookPart(parts.text(workbook), workbook, relationships);
  const strings =
    names.strings === null
      ? { texts: [], formatted: new Set<number>() }
      : readSharedStrings(parts.text(names.strings), names.strings);
  const styles = new DerivedStyles(
    names.styles === null ? NO_STYLES : readStyles(parts.text(names.styles), names.styles),
  );
  const sheets = new Map<string, SheetState>();
  const tables = new Map<string, TableState>();
  for (const tab of tabs) {
    const found = tablesOn(parts, tab);
    if (found.length === 0) continue;
    const bodies = found.map(bodyToRead);
    const context = { strings, look: (style: number | undefined) => styles.look(style) };
    const text = readSheet(parts.text(tab.part), tab.part, tab.name, bodies, context);
    sheets.set(tab.part, { text, edits: new Map(), rewritten: false });
    found.forEach((part, index) => {
      if ([...tables.keys()].some((name) => name.toLowerCase() === part.name.toLowerCase())) {
        throw damaged(`two of its tables are called ${part.name}`);
      }
      const { grid } = bodies[index] as BodyToRead;
      tables.set(part.name, { part, sheet: tab.part, grid });
    });
  }
  parts.checkRest();
  const state = new WorkbookState({ names, dateSystem, strings, parts, tabs, styles }, sheets, tables);
  return { state, macroEnabled };
}

function tablesOn(parts: PackageParts, tab: Tab): TablePart[] {
  return parts
    .relationships(tab.part)
    .filter((each) => each.kind === 'table' && !each.external)
    .map((each) => readTablePart(parts.text(each.target), each.target));
}

function bodyToRead(part: TablePart): BodyToRead {
  const body = { ...part.area, firstRow: firstBodyRow(part), lastRow: lastBodyRow(part) };
  return { body, grid: blankGrid(part.columns.length, body.lastRow - body.firstRow + 1) };
}
