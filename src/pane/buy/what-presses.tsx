import { useState } from 'preact/hooks';
import { type Currency, moneyText } from '../../core/money.ts';
import type { PlanAnswer } from '../../core/planning/plan-answer.ts';
import { DayText, Money } from '../parts/figures.tsx';
import { Disclosure, Heading } from '../parts/layout.tsx';
import { LongTable } from '../parts/long-table.tsx';
import { Prose } from '../parts/prose.tsx';
import { ShowMore } from '../parts/show-more.tsx';
import { coinsOf } from '../planning/planned-words.ts';
import { MaterialLink } from './material-link.tsx';
import {
  type GoingOff,
  goingOffIn,
  goingOffInAll,
  outlookInWords,
  type Pressing,
  pressingIn,
} from './pressing.ts';

const SHOWN_AT_ONCE = 6;
/** One more isn't worth a button. */
const SHOWN_AT_MOST = SHOWN_AT_ONCE + 1;

interface WhatPressesProps {
  readonly answer: PlanAnswer;
  readonly currency: Currency;
}

/** What will run out, most pressing first, and what will go off unused. */
export function WhatPresses({ answer, currency }: WhatPressesProps) {
  const [most, setMost] = useState(SHOWN_AT_ONCE);
  const pressing = pressingIn(answer);
  const goingOff = goingOffIn(answer);
  return (
    <>
      <section class="stack" aria-label="What will run out">
        <Heading level={3}>What will run out</Heading>
        {pressing.length === 0 ? (
          <p class="muted">{`Nothing will run out, and nothing is down to where it should be ordered. ${outlookInWords(answer)}`}</p>
        ) : (
          <ul class="notices">
            {pressing.slice(0, pressing.length > SHOWN_AT_MOST ? most : SHOWN_AT_MOST).map((each) => (
              <Presses key={each.material} of={each} />
            ))}
          </ul>
        )}
        {pressing.length > SHOWN_AT_MOST && (
          <ShowMore
            hidden={Math.max(pressing.length - most, 0)}
            onPress={() => setMost(most + SHOWN_AT_ONCE)}
          />
        )}
      </section>
      {goingOff.length > 0 && <GoesOff goingOff={goingOff} currency={currency} />}
    </>
  );
}

function Presses({ of: { material, hits, standing } }: { readonly of: Pressing }) {
  return (
    <li class={`notice ${hits === null ? 'notice-note' : 'notice-warn'}`}>
      <p>
        <MaterialLink material={material} />
      </p>
      {hits !== null && (
        <p class="low-mark">
          <Prose text={hits} />
        </p>
      )}
      <p class="muted">
        <Prose text={standing} />
      </p>
    </li>
  );
}

interface GoesOffProps {
  readonly goingOff: readonly GoingOff[];
  readonly currency: Currency;
}

function GoesOff({ goingOff, currency }: GoesOffProps) {
  const { lots, worth: total } = goingOffInAll(goingOff);
  const code = currency.code === '' ? '' : ` ${currency.code}`;
  return (
    <Disclosure
      summary={`What will go off unused: ${lots}, worth ${moneyText(coinsOf(total), currency)}${code}`}
    >
      <LongTable
        caption="What will go off unused"
        captionHidden
        columns={[
          { header: 'Material', wide: true },
          { header: 'How much', align: 'end' },
          { header: 'Worth', align: 'end' },
        ]}
        rows={goingOff.map(({ material, lot, quantity, goodUntil, worth }, place) => ({
          key: String(place),
          cells: [
            <>
              <MaterialLink material={material} />
              <span class="cell-second">
                {lot === null ? 'still to come' : `lot ${lot}`}
                {', good until '}
                <DayText day={goodUntil} />
              </span>
            </>,
            <span key="quantity" class="figure">
              {quantity}
            </span>,
            <Money key="worth" coins={coinsOf(worth)} currency={currency} />,
          ],
        }))}
      />
    </Disclosure>
  );
}
