import type { Row } from '../../core/records.ts';
import type { Books } from '../../session/session-state.ts';
import { cellOf } from '../../workbook/located-table.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';

interface ShowInTabProps {
  readonly books: Books;
  readonly row: Row;
  /** The column whose cell is shown. */
  readonly header: string;
}

/** A button that goes to a row's cell in the workbook. */
export function ShowInTab({ books, row, header }: ShowInTabProps) {
  const { goTo } = usePane();
  const table = books.reading.tables.get(row.place.table.toLowerCase());
  if (table === undefined) return null;
  return (
    <Button look="quiet" onPress={() => goTo(cellOf(table, row.place.row, header))}>
      Show in the tab
    </Button>
  );
}
