import { useState } from 'preact/hooks';
import type { BasketRemark } from '../../core/buying/basket.ts';
import type { Books } from '../../session/session-state.ts';
import { cellOf } from '../../workbook/located-table.ts';
import { offersTable } from '../../workbook/tables-trade.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Prose } from '../parts/prose.tsx';
import { ShowMore } from '../parts/show-more.tsx';

const SHOWN_AT_ONCE = 8;

interface RemarksProps {
  readonly books: Books;
  readonly remarks: readonly BasketRemark[];
}

/** What of what is needed can't be bought, or not in time; what nobody sells stands together. */
export function Remarks({ books, remarks }: RemarksProps) {
  const { goTo } = usePane();
  const unsold = remarks.filter(({ kind }) => kind === 'no offer');
  const isTogether = unsold.length > 1;
  const single = remarks.filter((remark) => !isTogether || !unsold.includes(remark));
  const [most, setMost] = useState(SHOWN_AT_ONCE);
  const table = books.reading.tables.get(offersTable.name.toLowerCase());
  return (
    <>
      {single.slice(0, most).map(({ material, sentence }) => (
        <p key={`${material} ${sentence}`} class="log-missing">
          <Prose text={sentence} />
        </p>
      ))}
      {single.length > SHOWN_AT_ONCE && (
        <ShowMore hidden={Math.max(single.length - most, 0)} onPress={() => setMost(most + SHOWN_AT_ONCE)} />
      )}
      {isTogether && (
        <div class="empty">
          <p class="empty-title">Nobody sells these yet</p>
          <ul class="plain-list">
            {unsold.map(({ material }) => (
              <li key={material}>{material}</li>
            ))}
          </ul>
          <p>Give each a row in the table Offers: who sells it, how much a pack holds, and its price.</p>
          {table !== undefined && (
            <div class="actions">
              <Button
                onPress={() =>
                  goTo(cellOf(table, table.snapshot.rowCount, offersTable.columns.supplier.header))
                }
              >
                Show the tab Offers
              </Button>
            </div>
          )}
        </div>
      )}
    </>
  );
}
