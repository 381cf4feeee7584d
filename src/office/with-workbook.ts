/** Runs one piece of work against the open workbook; everything that it queued is carried out when it resolves. */
export type WithWorkbook = <T>(work: (context: Excel.RequestContext) => Promise<T>) => Promise<T>;

/**
 * The one way to the workbook. A request that meets a cell being edited waits until the person has finished.
 * @param excel the namespace that the platform's script provides
 */
export function workbookRunner(excel: typeof Excel): WithWorkbook {
  return (work) => excel.run({ delayForCellEdit: true }, work);
}

/** Runs pieces of work one after another, in the order in which they were asked for. */
export function oneAfterAnother(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const turn = last.then(work);
    // Whoever asked for a piece of work hears of its failure; the next one starts all the same.
    last = turn.catch(() => undefined);
    return turn;
  };
}
