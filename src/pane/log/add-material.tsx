import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Studio } from '../../core/studio.ts';
import { Button } from '../parts/button.tsx';
import { Combobox } from '../parts/combobox.tsx';
import { type LinesChange, withLine } from './draft.ts';
import { materialOptions } from './log-options.ts';
import { addableMaterials, type MaterialLine } from './material-lines.ts';

export interface AddMaterialProps {
  readonly lines: readonly MaterialLine[];
  readonly studio: Studio;
  readonly change: (changed: LinesChange) => void;
}

/** Takes in a material that the rates don't name. */
export function AddMaterial({ lines, studio, change }: AddMaterialProps) {
  const [isOpen, setOpen] = useState(false);
  const [text, setText] = useState('');
  const options = useMemo(() => materialOptions(addableMaterials(lines, studio)), [lines, studio]);
  const field = useRef<HTMLInputElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isOpen) field.current?.focus();
  }, [isOpen]);
  const close = (): void => {
    setOpen(false);
    setText('');
  };
  if (!isOpen) {
    return (
      <div class="actions">
        <Button look="quiet" buttonRef={opener} onPress={() => setOpen(true)}>
          Something else was used
        </Button>
      </div>
    );
  }
  return (
    <div class="log-add">
      <Combobox
        label="What else was used"
        listLabel="Materials"
        hint="What is not counted is not in the list: nothing of it is drawn"
        text={text}
        onText={setText}
        options={options}
        fieldRef={field}
        onTake={(option) => {
          close();
          change((now) => withLine(now, option.value, { amount: '' }, true));
        }}
      />
      <Button
        look="quiet"
        onPress={() => {
          close();
          requestAnimationFrame(() => opener.current?.focus());
        }}
      >
        Nothing else
      </Button>
    </div>
  );
}
