import { signal } from '@preact/signals';
import { useRef, useState } from 'preact/hooks';
import type { MaterialFigures } from '../../core/stock.ts';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { TextField } from '../parts/fields.tsx';
import { DayText, Money, Quantity } from '../parts/figures.tsx';
import { ShowMore } from '../parts/show-more.tsx';
import { Table, type TableColumn, type TableRow } from '../parts/table.tsx';
import { useEscape } from '../parts/use-escape.ts';
import { leftMaterial, openLot, openMaterial } from '../route.ts';
import { StockActions } from './stock-actions.tsx';
import { firstGroups, matchOf, stockGroups } from './stock-list.ts';

const COLUMNS: readonly TableColumn[] = [
  { header: 'Material', wide: true },
  { header: 'Left', align: 'end' },
  { header: 'Worth', align: 'end' },
];

const SHOWN_AT_ONCE = 100;

/** What is searched for: it is kept while something else is open. */
const search = signal('');

/** All materials by kind, with a field to find or to scan one. */
export function StockListPage({ books }: { readonly books: Books }) {
  const { stock, settings, ledger } = books;
  const [most, setMost] = useState(SHOWN_AT_ONCE);
  const [notFound, setNotFound] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const text = search.value;
  const groups = stockGroups(stock, ledger.studio.lotsOfMaterial, text);
  const count = groups.reduce((total, { materials }) => total + materials.length, 0);
  const { code } = settings.currency;
  const left = leftMaterial.value;
  const shown = firstGroups(groups, most);
  const returns = shown.some(({ materials }) => materials.some(({ material }) => material.name === left));
  useEscape(text !== '', () => {
    search.value = '';
    setNotFound(null);
  });
  const openMatch = (entered: string): void => {
    const match = matchOf(ledger.studio, stockGroups(stock, ledger.studio.lotsOfMaterial, entered), entered);
    if (match === null) {
      setNotFound(entered.trim() === '' ? null : notFoundWords(entered, count));
      // The next scan takes the place of this one.
      field.current?.select();
      return;
    }
    search.value = '';
    if (match.kind === 'lot') openLot(match.lot);
    else openMaterial(match.material);
  };
  return (
    <>
      <TextField
        label="Find or scan"
        hint="A material, a lot or a place; Enter opens what it names"
        inputMode="search"
        value={text}
        fieldRef={field}
        focusHome={!returns}
        error={notFound}
        onInput={(value) => {
          search.value = value;
          setNotFound(null);
        }}
        onEnter={openMatch}
      />
      <p role="status" class={text.trim() === '' ? 'visually-hidden' : 'muted'}>
        {text.trim() === '' ? '' : count === 1 ? '1 material found' : `${count} materials found`}
      </p>
      <StockActions books={books} />
      {stock.materials.length === 0 && (
        <div class="empty">
          <p class="empty-title">No material is kept yet</p>
          <p>The table Materials has no row, or is not there.</p>
        </div>
      )}
      {shown.map(({ kind, materials }) => (
        <Table
          key={kind}
          caption={code === '' ? kind : `${kind}, worth in ${code}`}
          columns={COLUMNS}
          rows={materials.map((figures) => materialRow(figures, books, left))}
        />
      ))}
      {count > SHOWN_AT_ONCE && (
        <ShowMore hidden={Math.max(count - most, 0)} onPress={() => setMost(most + SHOWN_AT_ONCE)} />
      )}
    </>
  );
}

function notFoundWords(entered: string, count: number): string {
  const what = `No lot and no material is called ${entered.trim()}`;
  return count > 1 ? `${what}: choose one of the ${count} below that it is found in.` : `${what}.`;
}

function materialRow(figures: MaterialFigures, { settings }: Books, opened: string | null): TableRow {
  const { material, usable, goodUntil, worth, reorder } = figures;
  const quantity = figures.left;
  const name = (
    <>
      <Button look="link" focusHome={material.name === opened} onPress={() => openMaterial(material)}>
        {material.name}
      </Button>
      {reorder.isLow && (
        <span class="low-mark">
          Order when down to <Quantity quantity={reorder.reorderPoint} unit={material.unit} />
        </span>
      )}
      {goodUntil !== null && (
        <span class="cell-second">
          good until <DayText day={goodUntil} />
        </span>
      )}
    </>
  );
  const amount =
    quantity === null || usable === null ? (
      <span class="muted">not counted</span>
    ) : (
      <>
        <Quantity quantity={quantity} unit={material.unit} />
        {!usable.equals(quantity) && (
          <span class="cell-second">
            usable <Quantity quantity={usable} unit={material.unit} />
          </span>
        )}
      </>
    );
  return {
    key: `${material.name} ${material.record.place.sheetRow}`,
    cells: [name, amount, quantity === null ? '' : <Money coins={worth} currency={settings.currency} />],
  };
}
