import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { PlannedUse } from '../../actions/plan-treatment.ts';
import type { Currency } from '../../core/money.ts';
import { spokenQuantity } from '../../core/wording.ts';
import { Button } from '../parts/button.tsx';
import { Money, Quantity } from '../parts/figures.tsx';
import type { LinesChange } from './draft.ts';
import { LineFields } from './line-fields.tsx';
import { isChanged, type MaterialLine } from './material-lines.ts';
import { type LineWords, missingWords, TREATMENT_WORDS, takeWords } from './plan-words.ts';

export interface LineViewProps {
  readonly line: MaterialLine;
  /** What is taken of it; null where nothing is. */
  readonly use: PlannedUse | null;
  readonly currency: Currency;
  readonly change: (changed: LinesChange) => void;
  readonly errorOf: (field: string) => string | null;
  readonly fieldId: (field: string) => string;
  /** A lot was scanned or taken by Enter. */
  readonly onScanned: () => void;
  readonly words?: LineWords;
  /** What can be done about what is missing. */
  readonly children?: ComponentChildren;
}

/** What is taken of one material: how much, from which lots, at what cost; and, opened, how to change it. */
export function LineView(props: LineViewProps) {
  const { line, use, currency, words = TREATMENT_WORDS } = props;
  const isKept = isChanged(line) || line.isAdded;
  // A line with something in it stays open, and what was opened does not close when she takes that back.
  const [isOpened, setOpened] = useState(isKept);
  const isOpen = isOpened || isKept;
  const isSplit = use !== null && (use.takes.length > 1 || use.missing.compare(0) > 0);
  const missing = use === null ? null : missingWords(use, line, words);
  return (
    <li class="log-line">
      <div class="log-line-head">
        <span class="log-line-name">{line.material.name}</span>
        <span class="log-line-figures">
          {use === null ? (
            <span class="muted">none</span>
          ) : (
            <Quantity quantity={use.quantity} unit={use.unit} />
          )}
          {use !== null && use.takes.length > 0 && <Money coins={use.cost} currency={currency} />}
        </span>
      </div>
      {use !== null && (
        <ul class="log-takes">
          {use.takes.map((take) => {
            const { keeps, doubt } = takeWords(use, take);
            return (
              <li key={`${take.lot.name} ${take.lotIs}`}>
                {isSplit && (
                  <>
                    <Quantity quantity={take.quantity} unit={use.unit} />{' '}
                  </>
                )}
                from <strong class="unbroken">{take.lot.name}</strong>
                {keeps !== '' && `, ${keeps}`}{' '}
                <span class={`log-certainty log-${take.lotIs}`}>{take.lotIs}</span>
                {doubt !== null && <span class="log-doubt">{doubt}</span>}
              </li>
            );
          })}
        </ul>
      )}
      {missing !== null && <p class="log-missing">{missing}</p>}
      {props.children}
      {line.byRates !== null && line.draft.amount !== null && (
        <p class="muted log-by-rates">{`${words.by} ${spokenQuantity(line.byRates, line.unit)}.`}</p>
      )}
      {!isKept && (
        <Button
          look="quiet"
          expanded={isOpen}
          label={`Change amount or lot of ${line.material.name}`}
          onPress={() => setOpened(!isOpened)}
        >
          Change amount or lot
        </Button>
      )}
      {isOpen && <LineFields {...props} />}
    </li>
  );
}
