import type { CellValue } from '../workbook/port.ts';
import { cellValue } from './cell-values.ts';
import { isAnswerTooLarge } from './messages.ts';
import { inTurn } from './round-trips.ts';
import { type Block, halves } from './table-blocks.ts';
import type { WithWorkbook } from './with-workbook.ts';

/** Body rows of a table as the program gave them. */
export interface ReadBlock {
  readonly block: Block;
  /** Where the body stood: the first row and column count from 0. */
  readonly body: { readonly row: number; readonly column: number; readonly rows: number };
  readonly headers: readonly string[];
  readonly below: readonly CellValue[] | null;
  readonly values: readonly (readonly unknown[])[];
  readonly formulas: readonly (readonly unknown[])[];
  readonly numberFormats: readonly (readonly unknown[])[];
}

/** An answer that came without its cells: there were too many for one. */
class BlockTooLarge extends Error {
  readonly code = 'ResponsePayloadSizeLimitExceeded';
}

/** Reads blocks in one round trip; where the answer would be too large, in more of them. */
export async function readBlocks(withWorkbook: WithWorkbook, blocks: readonly Block[]): Promise<ReadBlock[]> {
  try {
    return await readAtOnce(withWorkbook, blocks);
  } catch (error) {
    const parts = isAnswerTooLarge(error) ? smaller(blocks) : null;
    if (parts === null) throw error;
    return (await inTurn(parts, (part) => readBlocks(withWorkbook, part))).flat();
  }
}

function smaller(blocks: readonly Block[]): readonly (readonly Block[])[] | null {
  const [only] = blocks;
  if (blocks.length > 1) {
    const middle = Math.ceil(blocks.length / 2);
    return [blocks.slice(0, middle), blocks.slice(middle)];
  }
  return only === undefined ? null : (halves(only)?.map((half) => [half]) ?? null);
}

function readAtOnce(withWorkbook: WithWorkbook, blocks: readonly Block[]): Promise<ReadBlock[]> {
  return withWorkbook(async (context) => {
    const queued = blocks.map((block) => queue(context, block));
    await context.sync();
    return queued.map((collect) => collect());
  });
}

function queue(context: Excel.RequestContext, block: Block): () => ReadBlock {
  const table = context.workbook.tables.getItem(block.table.id);
  const body = table.getDataBodyRange().load('rowIndex,columnIndex,rowCount');
  const columns = table.columns.load('items/name');
  const below = block.table.hasTotals ? null : body.getRowsBelow(1).load('values');
  const cells = rowsOf(body, block).load('values,formulas,numberFormat');
  return () => {
    const { values, formulas, numberFormat } = cells;
    if (!Array.isArray(values) || !Array.isArray(formulas) || !Array.isArray(numberFormat)) {
      throw new BlockTooLarge(`The answer for ${block.table.name} came without its cells`);
    }
    return {
      block,
      body: { row: body.rowIndex, column: body.columnIndex, rows: body.rowCount },
      headers: columns.items.map(({ name }) => name),
      below: below === null ? null : belowValues(below.values),
      values,
      formulas,
      numberFormats: numberFormat,
    };
  };
}

function rowsOf(body: Excel.Range, { from, count, toEnd }: Block): Excel.Range {
  const first = body.getCell(from, 0).getBoundingRect(body.getRow(0)).getLastRow();
  return toEnd ? first.getBoundingRect(body.getLastRow()) : first.getResizedRange(count - 1, 0);
}

function belowValues(values: readonly (readonly unknown[])[]): CellValue[] {
  return (values[0] ?? []).map((value) => cellValue(value, false, undefined));
}
