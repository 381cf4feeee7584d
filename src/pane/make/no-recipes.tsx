import type { Books } from '../../session/session-state.ts';
import { RECORD_TABLES } from '../../workbook/known-tables.ts';
import { cellOf } from '../../workbook/located-table.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';

/** Where a recipe is written, in a workbook that has none. */
export function NoRecipes({ books }: { readonly books: Books }) {
  const { goTo } = usePane();
  const { recipes, recipeParts } = RECORD_TABLES;
  const table = books.reading.tables.get(recipes.name.toLowerCase());
  return (
    <div class="empty">
      <p class="empty-title">No recipes yet</p>
      <p>
        {table === undefined
          ? `This workbook has no table ${recipes.name} that can be read: copy the tabs ${recipes.name} and ${recipeParts.name} from the starter workbook.`
          : `Give what is made here a row in ${recipes.name}: what it makes, how much, how long that keeps. What goes in has its rows in ${recipeParts.name}.`}
      </p>
      {table !== undefined && (
        <div class="actions">
          <Button onPress={() => goTo(cellOf(table, 0, recipes.columns.recipe.header))}>
            {`Show the tab ${recipes.name}`}
          </Button>
        </div>
      )}
    </div>
  );
}
