import { useMemo } from 'preact/hooks';
import type { BuyNeed } from '../../core/buying/basket-problem.ts';
import { offerFor } from '../../core/buying/wishes.ts';
import { keyOf } from '../../core/identifier.ts';
import { AddByName } from '../parts/add-by-name.tsx';
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
  if (options.length === 0) return null;
  return (
    <AddByName
      opener="Order something else as well"
      closer="Nothing else"
      label="What else to order"
      listLabel="Materials"
      hint="What somebody sells, and nothing asks for now"
      options={options}
      onTake={(material) => {
        const need = besides.find((each) => keyOf(each.material) === keyOf(material));
        const offer = need === undefined ? null : offerFor(need, 1, ordering);
        if (offer === null) return;
        const pack = { offer: offer.offer, material, supplier: offer.supplier, packWords: offer.packWords };
        setByHand.value = withPacks(setByHand.value, pack, offer.fromPacks);
      }}
    />
  );
}
