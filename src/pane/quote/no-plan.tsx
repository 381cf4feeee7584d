import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import type { QuoteViewProps } from './quote-view.tsx';
import { usedWords } from './quote-words.ts';

/** What to do where a job has no plan yet. */
export function NoPlan({ books, quoted }: QuoteViewProps) {
  const { goTo } = usePane();
  const plan = books.reading.tables.get('plan');
  const { quote, used } = quoted;
  return (
    <div class="empty">
      <p class="empty-title">{`${quote.job} has no row in the table Plan yet`}</p>
      <p>
        Type one row per treatment into the tab {plan?.snapshot.tab ?? 'Plan'}: the job, the treatment and how
        much of it. It is costed here as you type.
      </p>
      {plan === undefined ? (
        <p>This workbook has no table Plan: set up the tables that are missing first.</p>
      ) : (
        <div class="actions">
          <Button
            onPress={() =>
              goTo({
                tab: plan.snapshot.tab,
                row: plan.snapshot.firstRow + plan.snapshot.rowCount,
                column: plan.snapshot.firstColumn,
              })
            }
          >
            Go to the plan
          </Button>
        </div>
      )}
      {used.cost !== 0n && <p>{usedWords(used, books.settings.currency)}</p>}
    </div>
  );
}
