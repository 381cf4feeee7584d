import { Button } from '../parts/button.tsx';
import { openStock } from '../route.ts';

/** The name of a material; pressed it opens the material in Stock. */
export function MaterialLink({ material }: { readonly material: string }) {
  return (
    <Button look="link" class="plan-link" onPress={() => openStock({ kind: 'material', material })}>
      {material}
    </Button>
  );
}
