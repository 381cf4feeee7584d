import { useId, useState } from 'preact/hooks';
import { IconButton } from '../parts/button.tsx';
import { controlAttributes } from '../parts/fields.tsx';
import { packsTyped } from './by-hand.ts';

export interface PacksFieldProps {
  /** What the packs are of, for those who can't see what stands around it. */
  readonly of: string;
  /** One pack: `10 sheets`. */
  readonly packWords: string;
  readonly packs: number;
  /** Called once a number has been settled on: with Enter, on leaving, or by a button. */
  readonly onPacks: (packs: number) => void;
}

const MOST_PACKS = 9999;

/** How many packs: a number with a button for one less and one more. */
export function PacksField({ of, packWords, packs, onPacks }: PacksFieldProps) {
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const read = typed === null ? packs : packsTyped(typed);
  const error = typeof read === 'number' ? null : read.problem;
  const [isTold, setTold] = useState(false);
  const settle = (): void => {
    setTold(error !== null);
    if (typeof read !== 'number' || typed === null) return;
    setTyped(null);
    if (read !== packs) onPacks(read);
  };
  const step = (by: number): void => {
    const from = typeof read === 'number' ? read : packs;
    setTyped(null);
    setTold(false);
    onPacks(Math.min(Math.max(from + by, 0), MOST_PACKS));
  };
  const told = isTold ? error : null;
  return (
    <div class={told === null ? 'packs' : 'packs field-wrong'}>
      <div class="packs-row">
        <IconButton icon="less" label={`One pack less of ${of}`} onPress={() => step(-1)} />
        <input
          {...controlAttributes(id, { hint: '', error: told })}
          class="field-control"
          type="text"
          inputMode="numeric"
          autocomplete="off"
          value={typed ?? String(packs)}
          onInput={(event) => setTyped(event.currentTarget.value)}
          onBlur={settle}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || event.isComposing) return;
            event.preventDefault();
            settle();
          }}
        />
        <IconButton icon="more" label={`One pack more of ${of}`} onPress={() => step(1)} />
        <label for={id}>
          <span class="visually-hidden">{`${of}: `}</span>
          {`packs of ${packWords}`}
        </label>
      </div>
      {told !== null && (
        <div class="field-error" id={`${id}-error`}>
          {told}
        </div>
      )}
    </div>
  );
}
