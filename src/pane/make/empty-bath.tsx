import { useEffect, useMemo, useRef } from 'preact/hooks';
import { emptyBath } from '../../actions/bath.ts';
import { provisionalRandom } from '../../actions/plan-treatment.ts';
import { totalCost } from '../../core/lot-account.ts';
import type { Lot } from '../../core/studio.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { MOVED } from '../../session/opened-workbook.ts';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Money, Quantity } from '../parts/figures.tsx';
import { Banner } from '../parts/layout.tsx';
import { useEscape } from '../parts/use-escape.ts';
import { isBath, sameShares, shareOn, sharesOf } from './made-lots.ts';

interface EmptyBathProps {
  readonly lot: Lot;
  readonly books: Books;
  readonly onDone: () => void;
}

/** Says to which jobs what is left of a lot goes and what that costs, and empties it once she says so. */
export function EmptyBath({ lot, books, onDone }: EmptyBathProps) {
  const { act, session, view } = usePane();
  const { snapshot, today, settings } = books;
  const request = { lot: lot.name, date: today, by: null };
  const shown = useMemo(() => emptyBath(snapshot, request, today, provisionalRandom()), [snapshot, lot.name]);
  const yes = useRef<HTMLButtonElement>(null);
  useEffect(() => yes.current?.focus(), []);
  useEscape(true, onDone);
  const keep = (
    <Button look="quiet" onPress={onDone} buttonRef={shown.ok ? null : yes}>
      Leave it
    </Button>
  );
  if (!shown.ok) return <Banner tone="warn" title={shown.message} actions={keep} />;
  const shares = sharesOf(shown);
  const { currency } = settings;
  const label = isBath(lot) ? 'Empty the bath' : 'Throw it away';
  return (
    <div class="make-question">
      <p>What is left is charged as waste to:</p>
      <ul class="log-takes">
        {shares.map((share) => (
          <li key={shareOn(share)} class="log-take-cost">
            <span>
              {shareOn(share)}, <Quantity quantity={share.quantity} unit={lot.record.unit} />
            </span>
            <Money coins={share.cost} currency={currency} />
          </li>
        ))}
      </ul>
      <p class="log-total">
        <span>In all</span>
        <Money coins={totalCost(shares.map(({ cost }) => cost))} currency={currency} withCode />
      </p>
      {shown.remarks.map((remark) => (
        <p key={remark}>{remark}</p>
      ))}
      <div class="actions">
        <Button
          unavailable={view.value.busy !== null}
          label={`${label}: ${lot.name}`}
          buttonRef={yes}
          onPress={async () => {
            const done = await act(() =>
              session.carryOut(
                'Emptying',
                (now, day, random) => {
                  const written = emptyBath(now, { ...request, date: day }, day, random);
                  return written.ok && !sameShares(sharesOf(written), shares) ? MOVED : written;
                },
                (written) => {
                  const jobs = sharesOf(written).map(shareOn);
                  const left = shares.map(({ quantity }) => spokenQuantity(quantity, lot.record.unit));
                  const whom = new Intl.ListFormat('en-GB').format(jobs);
                  return `${isBath(lot) ? 'Emptied' : 'Thrown away'}: lot ${lot.name}, ${left.join(' and ')} charged to ${whom}.`;
                },
              ),
            );
            if (done.kind === 'done') onDone();
          }}
        >
          {label}
        </Button>
        {keep}
      </div>
    </div>
  );
}
