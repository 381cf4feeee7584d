import type { MaterialPlan } from '../../core/planning/plan-answer.ts';
import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';

interface ChartInWorkbookProps {
  readonly books: Books;
  readonly plan: MaterialPlan;
}

/** A button that puts what becomes of a material into the workbook: a tab with figures and a chart, to print or keep. */
export function ChartInWorkbook({ books, plan }: ChartInWorkbookProps) {
  const { session, act, view } = usePane();
  if (books.readingOnly !== null) return null;
  return (
    <div class="actions">
      <Button unavailable={view.value.busy !== null} onPress={() => act(() => session.drawChart(plan))}>
        Chart in the workbook
      </Button>
    </div>
  );
}
