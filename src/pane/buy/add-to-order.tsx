import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { BuyNeed } from '../../core/buying/basket-problem.ts';
import { offerFor } from '../../core/buying/wishes.ts';
import { keyOf } from '../../core/identifier.ts';
import { Button } from '../parts/button.tsx';
import { Combobox } from '../parts/combobox.tsx';
import { setByHand } from './basket-state.ts';
import { withPacks } from './by-hand.ts';

interface AddToOrderProps {
  /** What could be bought as well, though nothing asks for it. */
  readonly besides: readonly BuyNeed[];
  /** From whom something is ordered anyway. */
  readonly ordering: readonly string[];
}

/** Adds a pack of a material to the order that nothing asks for now. */
export function AddToOrder({ besides, ordering }: AddToOrderProps) {
  const [isOpen, setOpen] = useState(false);
  const [text, setText] = useState('');
  const set = setByHand.value;
  const options = useMemo(
    () =>
      besides
        .filter(({ material }) => !set.some((each) => keyOf(each.material) === keyOf(material)))
        .map(({ material, offers }) => ({
          value: material,
          detail: [...new Set(offers.map(({ supplier }) => supplier))].join(', '),
        })),
    [besides, set],
  );
  const field = useRef<HTMLInputElement>(null);
  const opener = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    if (isOpen) field.current?.focus();
  }, [isOpen]);
  const close = (): void => {
    setOpen(false);
    setText('');
    requestAnimationFrame(() => opener.current?.focus());
  };
  if (options.length === 0) return null;
  if (!isOpen) {
    return (
      <div class="actions">
        <Button look="quiet" buttonRef={opener} onPress={() => setOpen(true)}>
          Order something else as well
        </Button>
      </div>
    );
  }
  return (
    <div class="log-add">
      <Combobox
        label="What else to order"
        listLabel="Materials"
        hint="What somebody sells, and nothing asks for now"
        text={text}
        onText={setText}
        options={options}
        fieldRef={field}
        onTake={({ value }) => {
          const need = besides.find(({ material }) => keyOf(material) === keyOf(value));
          const offer = need === undefined ? null : offerFor(need, 1, ordering);
          if (offer !== null) {
            setByHand.value = withPacks(
              setByHand.value,
              { offer: offer.offer, material: value, supplier: offer.supplier, packWords: offer.packWords },
              offer.fromPacks,
            );
          }
          close();
        }}
      />
      <Button look="quiet" onPress={close}>
        Nothing else
      </Button>
    </div>
  );
}
