import { useEffect, useRef } from 'preact/hooks';
import { spokenQuantity, unitFor } from '../../core/wording.ts';
import { Button } from '../parts/button.tsx';
import { Combobox } from '../parts/combobox.tsx';
import { NumberField, SelectField } from '../parts/fields.tsx';
import { type LineDraft, withLine, withoutLine } from './draft.ts';
import type { LineViewProps } from './line-view.tsx';
import { IN_DRAW_ORDER, lotOptions } from './log-options.ts';
import { enterField, leaveField } from './log-state.ts';
import { amountText, isChanged, joinLine, type LinePart, splitLine } from './material-lines.ts';
import { TREATMENT_WORDS } from './plan-words.ts';

/** The fields by which she says what was really used of a material, and of which lots. */
export function LineFields(props: LineViewProps) {
  const { line, use, change, errorOf, fieldId, onScanned, words = TREATMENT_WORDS } = props;
  const { draft, material, unit, byRates } = line;
  const { of, second } = draft;
  const suffix = unitFor('2', unit);
  const lots = use === null ? [] : lotOptions(use.lots, use.unit);
  const amountField = useRef<HTMLInputElement>(null);
  useEffect(() => {
    // One that she added begins with its amount.
    if (line.isAdded && draft.amount === '') amountField.current?.focus();
  }, []);

  const set = (changed: Partial<Omit<LineDraft, 'of'>>): void => {
    change((now) => withLine(now, of, changed, line.isAdded));
  };
  /** The button that was pressed goes: the focus goes to the amount. */
  const toAmount = (): void => {
    amountField.current?.focus();
  };
  const field = (part: LinePart) => ({
    id: fieldId(`${part} of ${of}`),
    error: errorOf(`${part} of ${of}`),
    onLeave: () => leaveField(`${part} of ${of}`),
  });
  const lot = (part: 'lot' | 'second lot', label: string, text: string, onText: (typed: string) => void) => (
    <Combobox
      {...field(part)}
      label={label}
      listLabel={`Lots of ${material.name}`}
      text={text}
      placeholder={IN_DRAW_ORDER}
      options={lots}
      onText={(typed) => {
        enterField(`${part} of ${of}`);
        onText(typed);
      }}
      onTake={(_, by) => {
        if (by === 'enter') onScanned();
      }}
    />
  );

  return (
    <div class="log-line-fields">
      {line.alternatives.length > 1 && (
        <SelectField
          label="Which of them"
          value={material.name}
          options={line.alternatives.map((each) => ({
            value: each.material.name,
            label: `${each.material.name}: ${spokenQuantity(each.quantity, each.unit)}`,
          }))}
          onChange={(name) => {
            const byItself = line.alternatives.find((each) => each.material.name === of);
            const instead = name === byItself?.material.name ? null : name;
            // Amount and lots were those of another material.
            set({ instead, amount: null, lot: '', second: null });
          }}
        />
      )}
      <NumberField
        {...field('amount')}
        label="Amount used"
        value={amountText(line)}
        suffix={suffix}
        fieldRef={amountField}
        onInput={(amount) => set({ amount })}
      />
      {lot('lot', 'Lot', draft.lot, (typed) => set({ lot: typed }))}
      {second !== null && (
        <>
          <NumberField
            {...field('second amount')}
            label="And of a second lot"
            value={second.amount}
            suffix={suffix}
            onInput={(amount) => set({ second: { ...second, amount } })}
          />
          {lot('second lot', 'Second lot', second.lot, (typed) => set({ second: { ...second, lot: typed } }))}
        </>
      )}
      <div class="actions">
        {second === null ? (
          <Button
            look="quiet"
            label={`Split over a second lot: ${material.name}`}
            onPress={() => {
              set(splitLine(line, use));
              requestAnimationFrame(() => {
                document.getElementById(fieldId(`second amount of ${of}`))?.focus();
              });
            }}
          >
            Split over a second lot
          </Button>
        ) : (
          <Button
            look="quiet"
            label={`All in one: ${material.name}`}
            onPress={() => {
              set(joinLine(line));
              toAmount();
            }}
          >
            All in one
          </Button>
        )}
        {byRates !== null && draft.amount !== null && second === null && (
          <Button
            look="quiet"
            label={`${words.by} ${spokenQuantity(byRates, unit)}: ${material.name}`}
            onPress={() => {
              set({ amount: null });
              toAmount();
            }}
          >
            {`${words.by} ${spokenQuantity(byRates, unit)}`}
          </Button>
        )}
        {line.isAdded ? (
          <Button
            look="quiet"
            label={`Leave out ${material.name}`}
            onPress={() => change((now) => withoutLine(now, of))}
          >
            Leave it out
          </Button>
        ) : (
          isChanged(line) && (
            <Button
              look="quiet"
              label={`Undo the changes: ${material.name}`}
              onPress={() => {
                change((now) => withoutLine(now, of));
                toAmount();
              }}
            >
              Undo the changes
            </Button>
          )
        )}
      </div>
    </div>
  );
}
