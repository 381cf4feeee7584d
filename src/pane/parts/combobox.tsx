import '../styles/combobox.css';
import type { Ref } from 'preact';
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { classNames } from './class-names.ts';
import {
  afterTyping,
  CLOSED,
  type ComboboxOption,
  type ComboboxState,
  moreText,
  opened,
  press,
  type Shown,
  shownIn,
} from './combobox-model.ts';
import { controlAttributes, FieldFrame, type FieldProps } from './fields.tsx';

export interface ComboboxProps extends FieldProps {
  /** What stands in the field, typed, scanned or taken. */
  readonly text: string;
  readonly onText: (text: string) => void;
  /** An option was taken, by Enter, Tab, touch or a scanner's code with Enter; the text has become its value. */
  readonly onTake?: (option: ComboboxOption, by: 'enter' | 'tab' | 'pointer') => void;
  readonly options: readonly ComboboxOption[];
  /** What the options are, for those who can't see the list: "Jobs". */
  readonly listLabel: string;
  readonly placeholder?: string;
  readonly onLeave?: () => void;
  readonly fieldRef?: Ref<HTMLInputElement>;
  readonly focusHome?: boolean;
}

/**
 * A field with a list of what may stand there. Typing filters the list and highlights the best match; the focus stays
 * in the field. What stands there need not be of the list: it is for the form to say so.
 */
export function Combobox(props: ComboboxProps) {
  const made = useId();
  const id = props.id ?? made;
  const { text, options, listLabel } = props;
  const [state, setState] = useState<ComboboxState>(CLOSED);
  const popup = useRef<HTMLDivElement>(null);
  const input = useRef<HTMLInputElement | null>(null);
  const shown = state.open ? shownIn(state, options, text) : NOTHING_SHOWN;

  useEffect(() => {
    if (state.open) popup.current?.scrollIntoView({ block: 'nearest' });
  }, [state.open]);
  useEffect(() => {
    if (state.open)
      popup.current?.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' });
  }, [state.open, state.active]);

  const take = (option: ComboboxOption, by: 'enter' | 'tab' | 'pointer'): void => {
    setState(CLOSED);
    if (option.value !== text) props.onText(option.value);
    props.onTake?.(option, by);
    // The next scan replaces what stands there.
    requestAnimationFrame(() => {
      if (document.activeElement === input.current) input.current?.select();
    });
  };
  const onKeyDown = (event: KeyboardEvent & { currentTarget: HTMLInputElement }): void => {
    if (event.isComposing || event.ctrlKey || event.metaKey) return;
    const outcome = press(state, event, options, event.currentTarget.value);
    if (outcome.handled) event.preventDefault();
    setState(outcome.state);
    if (outcome.clear) props.onText('');
    if (outcome.take !== null) take(outcome.take, event.key === 'Tab' ? 'tab' : 'enter');
  };
  const optionId = (place: number): string => `${id}-option-${place}`;

  return (
    <FieldFrame {...props} id={id}>
      <div class="combobox">
        <div class="field-row">
          <input
            {...controlAttributes(id, props)}
            class="field-control combobox-control"
            type="text"
            role="combobox"
            aria-expanded={state.open}
            aria-controls={`${id}-list`}
            aria-autocomplete="list"
            aria-activedescendant={state.open && state.active >= 0 ? optionId(state.active) : undefined}
            autocomplete="off"
            spellcheck={false}
            placeholder={props.placeholder}
            value={text}
            data-focus-home={props.focusHome === true ? '' : undefined}
            ref={(element) => {
              input.current = element;
              give(props.fieldRef, element);
            }}
            onFocus={(event) => event.currentTarget.select()}
            onInput={(event) => {
              props.onText(event.currentTarget.value);
              setState(afterTyping(options, event.currentTarget.value));
            }}
            onKeyDown={onKeyDown}
            onClick={(event) => {
              if (state.open) return;
              event.currentTarget.select();
              setState(opened(options, text));
            }}
            onBlur={() => {
              setState(CLOSED);
              props.onLeave?.();
            }}
          />
          <button
            type="button"
            class="combobox-opener"
            tabIndex={-1}
            aria-label={`Show the list: ${listLabel}`}
            aria-expanded={state.open}
            onMouseDown={(event) => event.preventDefault()}
            onClick={() => {
              input.current?.focus();
              setState(state.open ? CLOSED : opened(options, text));
            }}
          >
            <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true" focusable="false">
              <path d="M3 6l5 5 5-5" />
            </svg>
          </button>
        </div>
        <div class={classNames('combobox-popup', !state.open && 'combobox-closed')} ref={popup}>
          <div class="combobox-list" role="listbox" id={`${id}-list`} aria-label={listLabel}>
            {shown.options.map((option, place) => (
              <Choice
                key={option.value}
                id={optionId(place)}
                option={option}
                active={place === state.active}
                onTake={() => take(option, 'pointer')}
              />
            ))}
          </div>
          <p class="combobox-more">{state.open ? restText(shown) : ''}</p>
        </div>
        <span class="visually-hidden" role="status">
          {state.open ? countText(shown) : ''}
        </span>
      </div>
    </FieldFrame>
  );
}

const NOTHING_SHOWN: Shown = { options: [], more: 0 };

function give(ref: Ref<HTMLInputElement> | undefined, element: HTMLInputElement | null): void {
  if (typeof ref === 'function') ref(element);
  else if (ref !== undefined && ref !== null) ref.current = element;
}

interface ChoiceProps {
  readonly id: string;
  readonly option: ComboboxOption;
  readonly active: boolean;
  readonly onTake: () => void;
}

function Choice({ id, option, active, onTake }: ChoiceProps) {
  // The focus stays in the field, which takes the keys and names the highlighted option.
  const pointer = { onMouseDown: (event: MouseEvent) => event.preventDefault(), onClick: onTake };
  return (
    <div
      class={classNames('combobox-option', active && 'combobox-active')}
      role="option"
      id={id}
      aria-selected={active}
      tabIndex={-1}
      {...pointer}
    >
      <span class="combobox-label">{option.label ?? option.value}</span>
      {option.detail !== undefined && <span class="combobox-detail">{option.detail}</span>}
      {option.doubt !== undefined && <span class="combobox-doubt">{option.doubt}</span>}
    </div>
  );
}

function restText({ options, more }: Shown): string {
  return options.length === 0 ? 'Nothing in this list is called that.' : (moreText(more) ?? '');
}

function countText({ options, more }: Shown): string {
  const count = options.length + more;
  return count === 1 ? '1 to choose from' : `${count} to choose from`;
}
