import {
  type CallArguments,
  type CallResult,
  evaluateCall,
  type FunctionBooks,
  type FunctionName,
} from './evaluate-call.ts';

/** The cells that ask the same thing, and what they were told last; null before there was anything to tell. */
interface Question {
  readonly name: FunctionName;
  readonly args: CallArguments;
  readonly cells: Set<(result: CallResult) => void>;
  told: CallResult | null;
}

/** The books, or why there are none; null before the workbook was read for the first time. */
type State = { readonly books: FunctionBooks } | { readonly unread: CallResult } | null;

/**
 * Answers the calls of all cells from books that are supplied from outside, and anew whenever these change. The
 * workbook is never read for a cell: cells that ask the same thing are answered once, and only told what is new.
 */
export class LiveAnswers {
  readonly #questions = new Map<string, Question>();
  #state: State = null;

  /**
   * Registers the call of one cell. It is answered at once where there are books, and waits where there are none yet.
   * @param tell is given the answer, and again whenever it is another one
   * @returns takes the call out again
   */
  register(name: FunctionName, args: CallArguments, tell: (result: CallResult) => void): () => void {
    const key = JSON.stringify([name, ...args]);
    let question = this.#questions.get(key);
    if (question === undefined) {
      question = { name, args, cells: new Set(), told: null };
      this.#questions.set(key, question);
      question.told = this.#answer(question);
    }
    const { cells, told } = question;
    // A function of its own for each cell, so that one registered twice leaves once.
    const cell = (result: CallResult) => tell(result);
    cells.add(cell);
    if (told !== null) cell(told);
    return () => {
      cells.delete(cell);
      if (cells.size === 0 && this.#questions.get(key) === question) this.#questions.delete(key);
    };
  }

  /** Takes books that are new or have changed: every registered call is answered from them. */
  publish(books: FunctionBooks): void {
    this.#take({ books });
  }

  /** Says in every registered cell that the workbook can't be read, until books are published again. */
  cannotRead(message: string): void {
    this.#take({ unread: { error: 'not read', message } });
  }

  #take(state: State): void {
    this.#state = state;
    for (const question of this.#questions.values()) {
      const result = this.#answer(question);
      if (result === null || isSame(result, question.told)) continue;
      question.told = result;
      for (const cell of question.cells) cell(result);
    }
  }

  #answer({ name, args }: Question): CallResult | null {
    if (this.#state === null) return null;
    return 'unread' in this.#state ? this.#state.unread : evaluateCall(name, args, this.#state.books);
  }
}

function isSame(a: CallResult, b: CallResult | null): boolean {
  if (b === null) return false;
  if ('value' in a) return 'value' in b && a.value === b.value;
  return 'error' in b && a.error === b.error && a.message === b.message;
}
