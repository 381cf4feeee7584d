import { accountIn } from '../../core/ledger.ts';
import { lifeLimitsOn, openedOn } from '../../core/life.ts';
import type { LotAccount } from '../../core/lot-account.ts';
import { toCoins } from '../../core/money.ts';
import type { LotFigures } from '../../core/stock.ts';
import type { Lot } from '../../core/studio.ts';
import { costPerUse, maxUses, USE, usesLeft } from '../../core/uses.ts';
import { spokenNumber, spokenQuantity } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { DayText, Money, Quantity } from '../parts/figures.tsx';
import { Disclosure } from '../parts/layout.tsx';
import { type Fact, Facts } from './facts.tsx';
import { standingOf } from './lot-list.ts';
import { isPhOutside, phRangeWords } from './ph-words.ts';

interface LotFactsProps {
  readonly books: Books;
  readonly figures: LotFigures;
}

/** The figures of a lot on the day of the books. */
export function LotFacts({ books, figures }: LotFactsProps) {
  const { ledger, stock, settings } = books;
  const { lot, left, worth } = figures;
  const { record } = lot;
  const { currency } = settings;
  const account = accountIn(ledger, lot);
  const opened = openedOn(account, stock.today);
  const cost = record.cost === null ? null : toCoins(record.cost, currency);
  const facts: Fact[] = [
    ['Left', <Quantity quantity={left} unit={record.unit} />],
    ...usesFacts(account, books),
    ['State', standingOf(figures, stock.today)],
    ['Good until', <GoodUntil account={account} figures={figures} books={books} />],
    ['Opened', <DayText day={opened} none="sealed" />],
    ...testFacts(lot, books),
    ['Place', record.storedAt ?? <span class="muted">not said</span>],
    ['Received', <DayText day={record.received} />],
    ['Quantity', <Quantity quantity={record.quantity} unit={record.unit} />],
    ['Cost', <Money coins={cost} currency={currency} withCode />],
    ['Worth', <Money coins={worth} currency={currency} withCode />],
    ...(record.supplier === null ? [] : [['Supplier', record.supplier] as const]),
    ...(lot.recipe === null ? [] : [['Made by', lot.recipe.name] as const]),
  ];
  return <Facts facts={facts} />;
}

/** The last day it is good, which limit that is, and, folded away, all the others. */
function GoodUntil({ account, figures, books }: LotFactsProps & { readonly account: LotAccount }) {
  const { lot, goodUntil } = figures;
  const [first, ...others] = lifeLimitsOn(account, books.stock.today);
  return (
    <>
      <DayText day={goodUntil} none={lot.doubtful ? 'can’t be told' : 'keeps'} />
      {first !== undefined && <span class="cell-second">{` ${first.reason}`}</span>}
      {others.length > 0 && (
        <Disclosure summary={`Its other ${others.length === 1 ? 'limit' : 'limits'}`}>
          <ul class="plain-list">
            {others.map(({ day, reason }) => (
              <li key={reason}>
                <DayText day={day} />
                <span class="cell-second">{` ${reason}`}</span>
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </>
  );
}

/** Of what is used again: how many uses are left, and what one costs. */
function usesFacts(account: LotAccount, { stock, settings: { currency } }: Books): Fact[] {
  const { lot } = account;
  const left = usesLeft(account, stock.today);
  const all = maxUses(lot);
  if (left === null || all === null || lot.record.unit.dimension === 'use') return [];
  return [
    [
      'Uses left',
      <>
        <Quantity quantity={left} unit={USE} />
        <span class="cell-second">{` of ${spokenQuantity(all, USE)}`}</span>
      </>,
    ],
    ['Cost per use', <Money coins={costPerUse(lot, currency)} currency={currency} withCode />],
  ];
}

/** Of what was tested or measured: when, by whom, and the pH with what it should be. */
function testFacts({ record, material }: Lot, { stock }: Books): Fact[] {
  const { retested, retestedBy, ph } = record;
  const range = phRangeWords(material);
  return [
    ...(retested === null || retested > stock.today
      ? []
      : [
          [
            'Retested',
            <>
              <DayText day={retested} />
              {retestedBy !== null && <span class="cell-second">{` by ${retestedBy}`}</span>}
            </>,
          ] as const,
        ]),
    ...(ph === null
      ? []
      : [
          [
            'pH',
            <>
              <span class={isPhOutside(material, ph) ? 'low-mark' : 'figure'}>{spokenNumber(ph)}</span>
              {range !== null && (
                <span class="cell-second">
                  {isPhOutside(material, ph) ? ` outside ${range}` : ` within ${range}`}
                </span>
              )}
            </>,
          ] as const,
        ]),
  ];
}
