import type { Recipe } from '../../core/studio.ts';
import { Heading } from '../parts/layout.tsx';
import { RecipeCautions } from '../parts/recipe-cautions.tsx';

/** How a recipe is made, and what to mind. */
export function RecipeNotes({ recipe }: { readonly recipe: Recipe }) {
  const { method } = recipe.record;
  return (
    <>
      {method !== null && (
        <div>
          <Heading level={3}>Method</Heading>
          <p>{method}</p>
        </div>
      )}
      <RecipeCautions recipe={recipe} />
    </>
  );
}
