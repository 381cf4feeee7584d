import type { ComponentChildren, Ref } from 'preact';
import { useId } from 'preact/hooks';
import { classNames } from './class-names.ts';

/** What all fields have. */
export interface FieldProps {
  readonly label: string;
  /** Needed where an ErrorSummary links to the field; else one is made. */
  readonly id?: string;
  /** What belongs there, below the label. */
  readonly hint?: ComponentChildren;
  /** What is wrong with what stands there, beside the field; null or absent where nothing is. */
  readonly error?: string | null;
  readonly optional?: boolean;
  readonly class?: string;
}

interface FrameProps extends FieldProps {
  readonly id: string;
  readonly children: ComponentChildren;
}

/** What a field's control needs to be tied to its label, hint and error. */
export function controlAttributes(id: string, { hint, error }: Pick<FieldProps, 'hint' | 'error'>) {
  const described = [isShown(hint) ? `${id}-hint` : '', isShown(error) ? `${id}-error` : ''].filter(
    (each) => each !== '',
  );
  return {
    id,
    'aria-invalid': isShown(error) ? ('true' as const) : undefined,
    'aria-describedby': described.length === 0 ? undefined : described.join(' '),
  };
}

function isShown(content: ComponentChildren): boolean {
  return content !== undefined && content !== null && content !== '' && content !== false;
}

/** Label, hint, control and error of a field, one below the other. */
export function FieldFrame(props: FrameProps) {
  const { id, label, hint, error, optional = false, children } = props;
  return (
    <div class={classNames('field', isShown(error) && 'field-wrong', props.class)}>
      <label class="field-label" for={id}>
        {label}
        {optional && <span class="field-optional"> (optional)</span>}
      </label>
      {isShown(hint) && (
        <div class="field-hint" id={`${id}-hint`}>
          {hint}
        </div>
      )}
      {children}
      {isShown(error) && (
        <div class="field-error" id={`${id}-error`}>
          {error}
        </div>
      )}
    </div>
  );
}

export interface TextFieldProps extends FieldProps {
  readonly value: string;
  readonly onInput: (value: string) => void;
  /** Enter was pressed in it, as a scanner does after a code. Without it, Enter submits the form. */
  readonly onEnter?: (value: string) => void;
  /** When the field is left. */
  readonly onLeave?: () => void;
  /** Stands right behind what is typed, such as a unit. */
  readonly suffix?: string;
  readonly inputMode?: 'text' | 'decimal' | 'numeric' | 'search';
  readonly fieldRef?: Ref<HTMLInputElement>;
  /** Gets the focus when something else than the tabs opens the section, or when what had it is gone. */
  readonly focusHome?: boolean;
}

/** A field for text. */
export function TextField(props: TextFieldProps) {
  const made = useId();
  const id = props.id ?? made;
  const { value, onInput, onEnter, onLeave, suffix, inputMode = 'text' } = props;
  return (
    <FieldFrame {...props} id={id}>
      <div class="field-row">
        <input
          {...controlAttributes(id, props)}
          class="field-control"
          type="text"
          inputMode={inputMode}
          autocomplete="off"
          spellcheck={false}
          value={value}
          ref={props.fieldRef ?? null}
          data-focus-home={props.focusHome === true ? '' : undefined}
          onInput={(event) => onInput(event.currentTarget.value)}
          onBlur={onLeave}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.isComposing || onEnter === undefined) return;
            event.preventDefault();
            onEnter(event.currentTarget.value);
          }}
        />
        {suffix !== undefined && <span class="field-suffix">{suffix}</span>}
      </div>
    </FieldFrame>
  );
}

/** A field for a number, its unit beside it; what stands in it is read with readNumber (number-text.ts). */
export function NumberField(props: TextFieldProps) {
  return <TextField {...props} inputMode="decimal" class={classNames('field-number', props.class)} />;
}

export interface DateFieldProps extends FieldProps {
  /** YYYY-MM-DD, or nothing; read it with parseDay. */
  readonly value: string;
  /** Gets nothing while the day is incomplete. */
  readonly onInput: (value: string) => void;
}

/** A field for a day: the browser's own. */
export function DateField(props: DateFieldProps) {
  const made = useId();
  const id = props.id ?? made;
  return (
    <FieldFrame {...props} id={id}>
      <input
        {...controlAttributes(id, props)}
        class="field-control"
        type="date"
        value={props.value}
        onInput={(event) => props.onInput(event.currentTarget.value)}
      />
    </FieldFrame>
  );
}

export interface SelectFieldProps extends FieldProps {
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly onChange: (value: string) => void;
}

/** A choice among a few: the browser's own. */
export function SelectField(props: SelectFieldProps) {
  const made = useId();
  const id = props.id ?? made;
  return (
    <FieldFrame {...props} id={id}>
      <select
        {...controlAttributes(id, props)}
        class="field-control"
        value={props.value}
        onChange={(event) => props.onChange(event.currentTarget.value)}
      >
        {props.options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
