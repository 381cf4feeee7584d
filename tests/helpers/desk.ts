import { booksOf } from '../../src/actions/books.ts';
import type { Refusal } from '../../src/actions/writing-desk.ts';
import type { Random } from '../../src/core/identifier.ts';
import { keyOf } from '../../src/core/identifier.ts';
import { accountIn, type Ledger } from '../../src/core/ledger.ts';
import type { LotAccount } from '../../src/core/lot-account.ts';
import type { Change, WorkbookSnapshot } from '../../src/workbook/port.ts';
import { withChanges } from '../../src/workbook/with-changes.ts';
import { randomFrom } from './bench.ts';
import type { Literal } from './literal.ts';
import { snapshotOf } from './snapshot.ts';

/** A workbook in memory that actions are carried out on, one after the other. */
export class Desk {
  snapshot: WorkbookSnapshot;
  readonly random: Random;

  constructor(literal: Literal, seed = 1) {
    this.snapshot = snapshotOf(literal);
    this.random = randomFrom(seed);
  }

  get ledger(): Ledger {
    return booksOf(this.snapshot).ledger;
  }

  /** The account of a lot as the workbook stands. */
  account(name: string): LotAccount {
    const lot = this.ledger.studio.lotsByKey.get(keyOf(name));
    if (lot === undefined) throw new Error(`there is no lot ${name}`);
    return accountIn(this.ledger, lot);
  }

  /** Carries out what an action answers; a refusal changes nothing. */
  try<A extends { readonly ok: true; readonly changes: readonly Change[] }>(
    act: (snapshot: WorkbookSnapshot, random: Random) => A | Refusal,
  ): A | Refusal {
    const answer = act(this.snapshot, this.random);
    if (answer.ok) this.snapshot = withChanges(this.snapshot, answer.changes);
    return answer;
  }

  /** The same, where a refusal is an error. */
  do<A extends { readonly ok: true; readonly changes: readonly Change[] }>(
    act: (snapshot: WorkbookSnapshot, random: Random) => A | Refusal,
  ): A {
    const answer = this.try(act);
    if (!answer.ok) throw new Error(answer.message);
    return answer;
  }

  /** Why something is refused. */
  refusal(act: (snapshot: WorkbookSnapshot, random: Random) => { readonly ok: true } | Refusal): string {
    const answer = act(this.snapshot, this.random);
    return answer.ok ? 'not refused' : answer.message;
  }
}
