import { useEffect, useRef, useState } from 'preact/hooks';
import { Button } from './button.tsx';
import { Combobox } from './combobox.tsx';
import type { ComboboxOption } from './combobox-model.ts';

export interface AddByNameProps {
  /** On the button that opens the field: "Something else was used". */
  readonly opener: string;
  /** On the button that closes it again: "Nothing else". */
  readonly closer: string;
  readonly label: string;
  readonly hint: string;
  /** What the options are, for those who can't see the list: "Materials". */
  readonly listLabel: string;
  readonly options: readonly ComboboxOption[];
  readonly onTake: (value: string) => void;
}

/** A button that opens a field by which one more thing is taken in by its name; it closes with what is taken. */
export function AddByName({ opener, closer, label, hint, listLabel, options, onTake }: AddByNameProps) {
  const [isOpen, setOpen] = useState(false);
  const [text, setText] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isOpen) field.current?.focus();
  }, [isOpen]);
  const close = (): void => {
    setOpen(false);
    setText('');
    // What was taken in may call the focus to itself afterwards.
    requestAnimationFrame(() => button.current?.focus());
  };
  if (!isOpen) {
    return (
      <div class="actions">
        <Button look="quiet" buttonRef={button} onPress={() => setOpen(true)}>
          {opener}
        </Button>
      </div>
    );
  }
  return (
    <div class="log-add">
      <Combobox
        label={label}
        listLabel={listLabel}
        hint={hint}
        text={text}
        onText={setText}
        options={options}
        fieldRef={field}
        onTake={({ value }) => {
          close();
          onTake(value);
        }}
      />
      <Button look="quiet" onPress={close}>
        {closer}
      </Button>
    </div>
  );
}
