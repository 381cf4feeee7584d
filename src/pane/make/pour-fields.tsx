import { useMemo, useRef } from 'preact/hooks';
import { keyOf } from '../../core/identifier.ts';
import { spokenQuantity } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { focusField } from '../focus.ts';
import { itemOptions, jobOptions } from '../log/log-options.ts';
import { enterField } from '../log/log-state.ts';
import { Button } from '../parts/button.tsx';
import { Cautions } from '../parts/cautions.tsx';
import { Combobox } from '../parts/combobox.tsx';
import { NumberField } from '../parts/fields.tsx';
import { hazardsOf } from '../parts/hazard-words.ts';
import { Disclosure } from '../parts/layout.tsx';
import type { BatchViewProps } from './batch-view.tsx';
import { isPoured, type MakeDraft, NO_POUR, type PourDraft, withPour } from './make-draft.ts';
import { pourOptions } from './make-options.ts';
import type { MakeWork } from './make-work.ts';

interface PourFieldsProps {
  readonly books: Books;
  readonly draft: MakeDraft;
  readonly work: MakeWork;
  readonly change: BatchViewProps['change'];
  readonly field: BatchViewProps['field'];
}

/** For which job and treatment a batch is poured at once, and how much of it. */
export function PourFields({ books, draft, work, change, field }: PourFieldsProps) {
  const { studio } = books.ledger;
  const { pour } = draft;
  const { material, unit, besides } = work;
  const jobs = useMemo(() => jobOptions(studio), [studio]);
  const items = useMemo(() => itemOptions(studio, pour.job), [studio, pour.job]);
  const treatments = useMemo(
    () => (material === null ? [] : pourOptions(studio, material, pour.job)),
    [studio, material, pour.job],
  );
  const isOpen = useRef(false);
  isOpen.current ||= isPoured(draft);
  if (material === null) return null;
  const box = (name: keyof PourDraft) => {
    const tied = field(`pour-${name}`);
    const take = (typed: string): void => {
      enterField(tied.id);
      change((now) => withPour(now, name, typed));
    };
    return { ...tied, text: pour[name], value: pour[name], onText: take, onInput: take };
  };
  /** To the next field: at once, so that what is scanned next lands there; only one that comes with what was taken has to be waited for. */
  const goOn = (name: keyof PourDraft): void => {
    const { id } = field(`pour-${name}`);
    const next = document.getElementById(id);
    if (next === null) focusField(id);
    else next.focus();
  };
  const treated = studio.treatmentsByKey.get(keyOf(pour.treatment));
  return (
    <Disclosure summary="Pour it at once for a job" open={isOpen.current}>
      <div class="stack">
        {treatments.length === 0 ? (
          <p class="muted">{`No treatment takes ${material.name} by its usage rates.`}</p>
        ) : (
          <>
            <Combobox
              {...box('job')}
              label="Job"
              listLabel="Jobs"
              options={jobs}
              onTake={(option, by) => {
                if (by === 'tab') return;
                const hasItems = itemOptions(studio, option.value).length > 0;
                goOn(hasItems ? 'item' : 'treatment');
              }}
            />
            {(items.length > 0 || pour.item !== '') && (
              <Combobox
                {...box('item')}
                label="Item"
                optional
                listLabel="Items of this job"
                options={items}
                onTake={(_, by) => {
                  if (by !== 'tab') goOn('treatment');
                }}
              />
            )}
            <Combobox
              {...box('treatment')}
              label="Treatment"
              listLabel={`Treatments that take ${material.name}`}
              options={treatments}
              onTake={(_, by) => {
                if (by !== 'tab') goOn('extent');
              }}
            />
            <div class="pair">
              <NumberField {...box('extent')} label="Treated" suffix={treated?.record.extentUnit ?? ''} />
              <NumberField {...box('amount')} label="Poured" optional suffix={unit?.name ?? ''} />
            </div>
            <p class="muted">Where nothing says how much is poured, all of it is.</p>
            {besides !== null && besides.uses.length > 0 && (
              <div class="stack">
                <p>Besides, this treatment takes:</p>
                <ul class="plain-list">
                  {besides.uses.map(({ material: other, quantity, unit: inUnit, takes, missing }) => (
                    <li key={other.name}>
                      {`${spokenQuantity(quantity, inUnit)} of ${other.name}`}
                      {takes.length > 0 && `, from ${takes.map(({ lot }) => lot.name).join(', ')}`}
                      {missing.compare(0) > 0 && `; not covered: ${spokenQuantity(missing, inUnit)}`}
                    </li>
                  ))}
                </ul>
                <Cautions hazards={hazardsOf(besides.uses.map((use) => use.material))} />
              </div>
            )}
            {isPoured(draft) && (
              <div class="actions">
                <Button
                  look="quiet"
                  onPress={() => {
                    change((now) => ({ ...now, pour: NO_POUR }));
                    focusField(field('pour-job').id);
                  }}
                >
                  Don’t pour it
                </Button>
              </div>
            )}
          </>
        )}
      </div>
    </Disclosure>
  );
}
