import type { NumberOfText } from './cell-edit.ts';
import { CONTENT_TYPES_PART, withContentType, withoutContentType } from './content-types.ts';
import type { PackageParts } from './package-parts.ts';
import { relationshipsPartOf, withoutRelationship, withRelationship } from './relationships.ts';
import { SharedStringNumbers, withAddedStrings } from './shared-strings.ts';
import { patchSheet } from './sheet-patch.ts';
import { plainStyles, STYLES_CONTENT_TYPE } from './styles-part.ts';
import { withCalculationOnLoad } from './workbook-part.ts';
import type { WorkbookState } from './workbook-state.ts';

/** The bytes of the workbook with everything that was changed; parts that weren't touched keep theirs. */
export function saveWorkbookState(state: WorkbookState): Uint8Array {
  const { names } = state;
  const parts = state.parts.fork();
  writeSheets(state, parts);
  if (state.styles.changed) ensureStyles(state, parts);
  if (state.formulasChanged && names.calculationChain !== null) {
    dropPart(parts, names.workbook, names.calculationChain);
  }
  if (state.cellsChanged && holdsFormula(parts, names.workbook)) {
    parts.replace(names.workbook, withCalculationOnLoad(parts.text(names.workbook), names.workbook));
  }
  return parts.save();
}

function writeSheets(state: WorkbookState, parts: PackageParts): void {
  const { names, strings } = state;
  let numbers: SharedStringNumbers | null = null;
  const numberOfText: NumberOfText = (text) => {
    if (names.strings === null) return null;
    numbers ??= new SharedStringNumbers(strings);
    return numbers.numberOf(text);
  };
  let references = state.sharedReferences;
  for (const sheet of state.sheets) {
    if (sheet.edits.size === 0 && !sheet.rewritten) continue;
    const { text, sharedReferences } = patchSheet(sheet.text, sheet.edits, numberOfText);
    references += sharedReferences;
    parts.replace(sheet.text.part, text);
  }
  const added = (numbers as SharedStringNumbers | null)?.added ?? [];
  if (names.strings !== null && (added.length > 0 || references !== 0)) {
    parts.replace(
      names.strings,
      withAddedStrings(parts.text(names.strings), names.strings, added, references),
    );
  }
}

/**
 * Brings the derived styles into the styles part, which is made where the workbook has none.
 * @returns the name of the part
 */
export function ensureStyles(state: WorkbookState, parts: PackageParts): string {
  const { styles, workbook } = state.names;
  if (styles !== null) {
    parts.replace(styles, state.styles.write(parts.text(styles), styles));
    return styles;
  }
  const part = `${workbook.slice(0, workbook.lastIndexOf('/') + 1)}styles.xml`;
  const relationships = relationshipsPartOf(workbook);
  parts.replace(part, state.styles.write(plainStyles(parts.text(workbook)), part));
  parts.replace(relationships, withRelationship(parts.text(relationships), workbook, 'styles', part));
  parts.replace(
    CONTENT_TYPES_PART,
    withContentType(parts.text(CONTENT_TYPES_PART), part, STYLES_CONTENT_TYPE),
  );
  return part;
}

/** Takes out a part that the workbook refers to: the part, the reference, and its content type. */
function dropPart(parts: PackageParts, workbook: string, part: string): void {
  const relationships = relationshipsPartOf(workbook);
  parts.remove(part);
  parts.replace(relationships, withoutRelationship(parts.text(relationships), workbook, part));
  parts.replace(CONTENT_TYPES_PART, withoutContentType(parts.text(CONTENT_TYPES_PART), part));
}

function holdsFormula(parts: PackageParts, workbook: string): boolean {
  return parts
    .relationships(workbook)
    .some(
      (each) => each.kind === 'worksheet' && /<(?:[^\s:<>/]+:)?f[\s/>]/.test(parts.find(each.target) ?? ''),
    );
}
