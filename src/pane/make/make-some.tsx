import type { MaterialFigures } from '../../core/stock.ts';
import { Button } from '../parts/button.tsx';
import { openMake } from '../route.ts';

/** Where a material is made here: a button that opens Make with its recipe, and with what is to be made where it runs low. */
export function MakeSome({ figures }: { readonly figures: MaterialFigures }) {
  const { material, reorder } = figures;
  const { recipe, unit } = material;
  if (recipe === null) return null;
  const isTold =
    reorder.suggestedOrder.compare(0) > 0 && material.converter.factor(recipe.record.unit, unit) !== null;
  return (
    <div class="actions">
      <Button
        onPress={() =>
          openMake({
            recipe: recipe.name,
            amount: isTold ? reorder.suggestedOrder : null,
            unit: isTold ? unit : null,
          })
        }
      >
        Make some
      </Button>
    </div>
  );
}
