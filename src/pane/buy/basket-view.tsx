import type { Basket, BasketLine, BasketOrder } from '../../core/buying/basket.ts';
import type { BuyNeed } from '../../core/buying/basket-problem.ts';
import { spokenDay } from '../../core/day.ts';
import type { Currency } from '../../core/money.ts';
import type { Books } from '../../session/session-state.ts';
import { FOCUS_ROW, keepingFocus } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Money } from '../parts/figures.tsx';
import { Disclosure, Heading } from '../parts/layout.tsx';
import { Prose } from '../parts/prose.tsx';
import { coinsOf } from '../planning/planned-words.ts';
import { setByHand } from './basket-state.ts';
import { offeredBesides, type SetByHand, withoutOffers, withPacks } from './by-hand.ts';
import { MaterialLink } from './material-link.tsx';
import { orderIt } from './ordering.ts';
import { PacksField } from './packs-field.tsx';
import { lineReasons } from './reasons.ts';
import { Remarks } from './remarks.tsx';

export interface BasketViewProps {
  readonly books: Books;
  readonly basket: Basket;
  readonly needs: readonly BuyNeed[];
  /** It is of the workbook as it is, and nothing is being worked out: it may be ordered. */
  readonly isFresh: boolean;
}

/** What to order now, one block for each supplier, with what it comes to. */
export function BasketView({ books, basket, needs, isFresh }: BasketViewProps) {
  const { currency } = books.settings;
  const shown = new Set(basket.orders.flatMap(({ lines }) => lines.map(({ offer }) => offer)));
  const leftOut = setByHand.value.filter(({ offer, packs }) => packs === 0 && !shown.has(offer));
  const besides = offeredBesides(needs, basket).filter(
    ({ offer }) => !leftOut.some((each) => each.offer === offer.offer),
  );
  return (
    <>
      <Remarks books={books} remarks={basket.remarks} />
      {basket.orders.map((order) => (
        <SupplierBlock key={order.supplier} order={order} books={books} needs={needs} isFresh={isFresh} />
      ))}
      {leftOut.length > 0 && (
        <div class="plan-block">
          <p class="plan-name">Left out by hand</p>
          <ul class="plan-list">
            {leftOut.map((each) => (
              <li key={each.offer} class="plan-item" {...{ [FOCUS_ROW]: '' }}>
                <p>{`${each.material}, from ${each.supplier}`}</p>
                <Packs pack={each} packs={0} />
                <BackToSuggestion offers={[each.offer]} of={each.material} />
              </li>
            ))}
          </ul>
        </div>
      )}
      {basket.orders.length > 1 && (
        <p class="log-total" role="status">
          <span>All orders, with carriage</span>
          <Money coins={coinsOf(basket.total)} currency={currency} withCode />
        </p>
      )}
      {setByHand.value.length > 1 && (
        <BackToSuggestion offers={setByHand.value.map(({ offer }) => offer)} of={null} />
      )}
      {besides.length > 0 && (
        <Disclosure summary="Other packs and suppliers">
          <ul class="plan-list">
            {besides.map(({ material, offer }) => (
              <li key={offer.offer} class="plan-item">
                <div class="plan-item-head">
                  <span>{`${material}, from ${offer.supplier}`}</span>
                  <Money coins={coinsOf(offer.packPrice)} currency={currency} />
                </div>
                {offer.fromPacks > 1 && (
                  <p class="muted">{`at this price from ${offer.fromPacks} packs on`}</p>
                )}
                <Packs pack={{ ...offer, material }} packs={0} />
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
    </>
  );
}

interface SupplierBlockProps extends Omit<BasketViewProps, 'basket'> {
  readonly order: BasketOrder;
}

function SupplierBlock({ order, books, needs, isFresh }: SupplierBlockProps) {
  const { act, session, view } = usePane();
  const { supplier, expected, lines, goods, carriage, reasons } = order;
  const { currency } = books.settings;
  return (
    <section class="plan-block" aria-label={`From ${supplier}`}>
      <Heading level={3}>{`From ${supplier}`}</Heading>
      <p class="muted">{`Here about ${spokenDay(expected)}, if it is ordered today.`}</p>
      <ul class="plan-list">
        {lines.map((line) => (
          <Line
            key={line.offer}
            line={line}
            supplier={supplier}
            need={needs.find(({ material }) => material === line.material)}
            currency={currency}
          />
        ))}
      </ul>
      <div role="status">
        <dl class="basket-sums">
          <Sum name="Goods" coins={goods} currency={currency} />
          <Sum name="Carriage" coins={carriage} currency={currency} />
          <Sum name="Together" coins={goods + carriage} currency={currency} isTotal />
        </dl>
      </div>
      {reasons.map((reason) => (
        <p key={reason}>
          <Prose text={reason} />
        </p>
      ))}
      {books.readingOnly === null && lines.some(({ packs }) => packs > 0) && (
        <div class="actions">
          <Button
            look="main"
            unavailable={!isFresh || view.value.busy !== null}
            onPress={() => act(() => orderIt(session, books, order), { undoable: false })}
          >
            {`Order from ${supplier}`}
          </Button>
        </div>
      )}
    </section>
  );
}

interface LineProps {
  readonly line: BasketLine;
  readonly supplier: string;
  readonly need: BuyNeed | undefined;
  readonly currency: Currency;
}

function Line({ line, supplier, need, currency }: LineProps) {
  const { material, packs, packPrice, amount, offer } = line;
  const set = setByHand.value.find((each) => each.offer === offer);
  return (
    <li class="plan-item" {...{ [FOCUS_ROW]: '' }}>
      <div class="plan-item-head">
        <MaterialLink material={material} />
        <Money coins={coinsOf(amount)} currency={currency} />
      </div>
      <Packs pack={{ ...line, supplier }} packs={set?.packs ?? packs} />
      <p class="muted">
        <Money coins={coinsOf(packPrice)} currency={currency} /> a pack
      </p>
      {set !== undefined && (
        <BackToSuggestion offers={[offer]} of={material} isWish={need?.by.length === 0} />
      )}
      <ul class="plain-list">
        {lineReasons(line, need).map((reason) => (
          <li key={reason}>
            <Prose text={reason} />
          </li>
        ))}
      </ul>
    </li>
  );
}

interface PacksProps {
  readonly pack: Omit<SetByHand, 'packs'>;
  readonly packs: number;
}

function Packs({ pack, packs }: PacksProps) {
  const { offer, material, supplier, packWords } = pack;
  return (
    <PacksField
      of={`${material} from ${supplier}`}
      packWords={packWords}
      packs={packs}
      onPacks={(next) => {
        setByHand.value = withPacks(setByHand.value, { offer, material, supplier, packWords }, next);
      }}
    />
  );
}

interface BackProps {
  readonly offers: readonly string[];
  /** Null for all that was set by hand. */
  readonly of: string | null;
  /** Nothing asks for it: without the number set by hand it is not in the order. */
  readonly isWish?: boolean;
}

function BackToSuggestion({ offers, of, isWish = false }: BackProps) {
  const back =
    of === null ? 'Back to the suggestion for all' : isWish ? 'Take it off' : 'Back to the suggestion';
  return (
    <div class="actions">
      {of !== null && <span class="log-certainty log-confirmed">set by hand</span>}
      <Button
        look="quiet"
        label={of === null ? back : `${back}: ${of}`}
        onPress={() =>
          keepingFocus(() => {
            setByHand.value = withoutOffers(setByHand.value, offers);
          })
        }
      >
        {back}
      </Button>
    </div>
  );
}

interface SumProps {
  readonly name: string;
  readonly coins: number;
  readonly currency: Currency;
  readonly isTotal?: boolean;
}

function Sum({ name, coins, currency, isTotal = false }: SumProps) {
  return (
    <div class={isTotal ? 'basket-sum basket-total' : 'basket-sum'}>
      <dt>{name}</dt>
      <dd>
        <Money coins={coinsOf(coins)} currency={currency} withCode={isTotal} />
      </dd>
    </div>
  );
}
