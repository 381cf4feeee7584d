import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { functionsMetadata } from '../../src/build/functions-json.ts';
import { PROJECT_PATHS } from '../../src/build/project-paths.ts';
import { associateFunctions, FUNCTIONS_BY_ID } from '../../src/functions/associate.ts';
import { liveAnswers } from '../../src/functions/cell-calls.ts';
import { FUNCTION_NAMES } from '../../src/functions/evaluate-call.ts';
import { cost, cover, goodUntil, left, orderAt, usable } from '../../src/functions/functions.ts';
import { studioBooks } from './books.ts';

/** What the spreadsheet's runtime gives to functions, as far as they use it. */
class CellError {
  readonly code: string;
  readonly message: string | undefined;
  constructor(code: string, message?: string) {
    this.code = code;
    this.message = message;
  }
}
const associated = new Map<string, unknown>();
const RUNTIME = {
  Error: CellError,
  ErrorCode: { invalidValue: '#VALUE!', notAvailable: '#N/A' },
  associate: (id: string, code: unknown) => associated.set(id, code),
};

/** A cell with a streaming call, which holds what it was told last. */
class Cell implements CustomFunctions.StreamingInvocation<number> {
  readonly shown: unknown[] = [];
  onCanceled?: () => void;
  readonly setResult = (value: unknown): void => {
    this.shown.push(value instanceof CellError ? { ...value } : value);
  };
}

describe('functions in cells', () => {
  beforeAll(() => vi.stubGlobal('CustomFunctions', RUNTIME));
  afterAll(() => vi.unstubAllGlobals());

  test('every function shows its own figure, and none before the workbook was read', () => {
    const cells = Array.from({ length: 6 }, () => new Cell());
    const [a, b, c, d, e, f] = cells as [Cell, Cell, Cell, Cell, Cell, Cell];
    left('Wheat starch', 'kg', a);
    usable('Repair tissue 5', '', b);
    goodUntil('P-1', c);
    cost('Repair tissue 5', 3, '', d);
    cover('Repair tissue 5', e);
    orderAt('Repair tissue 5', 'sheet', f);
    expect(cells.map(({ shown }) => shown)).toEqual([[], [], [], [], [], []]);
    liveAnswers.publish(studioBooks());
    expect(cells.map(({ shown }) => shown)).toEqual([
      [1],
      [12],
      [46_118],
      [13],
      [{ code: '#N/A', message: expect.stringContaining('Nothing was used of Repair tissue 5') }],
      [0],
    ]);
    for (const cell of cells) cell.onCanceled?.();
    liveAnswers.publish(studioBooks({}, '2027-01-01'));
    expect(cells.map(({ shown }) => shown.length)).toEqual([1, 1, 1, 1, 1, 1]);
  });

  test.each([
    ['a name that is nobody’s', (cell: Cell) => left('Vellum', '', cell), '#VALUE!', 'Vellum'],
    ['an unknown unit', (cell: Cell) => left('Wheat starch', 'jar', cell), '#VALUE!', 'jar'],
    ['a bad quantity', (cell: Cell) => cost('Wheat starch', -1, '', cell), '#VALUE!', '-1'],
    ['no way between units', (cell: Cell) => left('Wheat starch', 'sheet', cell), '#VALUE!', 'sheets'],
    ['not counted', (cell: Cell) => left('Deionised water', '', cell), '#N/A', 'not counted'],
    ['a lot that keeps', (cell: Cell) => goodUntil('T-2', cell), '#N/A', 'keeps'],
    ['no cost', (cell: Cell) => cost('Silicone release paper', 9, '', cell), '#N/A', 'No lot and no offer'],
  ])('%s is an error of the spreadsheet’s own, with its sentence', (_, ask, code, part) => {
    liveAnswers.publish(studioBooks());
    const cell = new Cell();
    ask(cell);
    expect(cell.shown).toEqual([{ code, message: expect.stringContaining(part) }]);
    cell.onCanceled?.();
  });

  test('a workbook that can’t be read is #N/A with the reason', () => {
    liveAnswers.cannotRead('The workbook is busy.');
    const cell = new Cell();
    left('Wheat starch', '', cell);
    expect(cell.shown).toEqual([{ code: '#N/A', message: 'The workbook is busy.' }]);
  });

  test('each is associated with the id that functions.json gives it', async () => {
    const { ids, json } = await functionsMetadata(PROJECT_PATHS.functions);
    expect(ids).toEqual([...FUNCTION_NAMES]);
    expect(JSON.parse(json).functions.map(({ id }: { id: string }) => id)).toEqual(ids);
    expect(associateFunctions()).toBe(true);
    expect([...associated.keys()]).toEqual(ids);
    expect([...associated.values()]).toEqual(Object.values(FUNCTIONS_BY_ID));
    expect(Object.keys(FUNCTIONS_BY_ID)).toEqual([...FUNCTION_NAMES]);
  });
});

test('where the spreadsheet has no custom functions, that is said and nothing fails', () => {
  expect(associateFunctions()).toBe(false);
});

test('functions.json', async () => {
  const { json } = await functionsMetadata(PROJECT_PATHS.functions);
  await expect(json).toMatchFileSnapshot('./functions.json');
});
