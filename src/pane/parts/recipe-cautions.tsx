import { READ_THE_SHEET } from '../../core/hazard-wording.ts';
import { cautionsForRecipe } from '../../core/recipe-cautions.ts';
import type { Recipe } from '../../core/studio.ts';
import { Banner } from './layout.tsx';
import { StatementKey, StatementList } from './statement-list.tsx';

/** What to know before making a recipe: its cautions, the hazards of its parts, what to wear. */
export function RecipeCautions({ recipe }: { readonly recipe: Recipe }) {
  const { own, parts, protection, notClassified } = cautionsForRecipe(recipe);
  if (own === null && parts.length === 0) return null;
  return (
    <Banner tone="warn" title="Cautions">
      <div class="dangers">
        {own !== null && <p>{own}</p>}
        {protection.map(({ code, sentence, calledForBy }) => (
          <p key={code}>
            <strong>{code}</strong> {`${sentence} (${calledForBy.join(', ')})`}
          </p>
        ))}
        {parts.map(({ material, statements, words }) => (
          <div key={material} class="dangers">
            <p>
              <strong>{material}</strong>
              {words.length > 0 && `: ${words.join('; ')}`}
            </p>
            <StatementList statements={statements} />
          </div>
        ))}
        <StatementKey statements={parts.flatMap(({ statements }) => statements)} />
        {notClassified !== null && <p>{notClassified}</p>}
        <p>{READ_THE_SHEET}</p>
      </div>
    </Banner>
  );
}
