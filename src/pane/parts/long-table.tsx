import { useState } from 'preact/hooks';
import { ShowMore } from './show-more.tsx';
import { Table, type TableProps } from './table.tsx';

const SHOWN_AT_ONCE = 50;

/** A table that shows its first rows, and more when asked. */
export function LongTable(props: TableProps) {
  const [most, setMost] = useState(SHOWN_AT_ONCE);
  const count = props.rows.length;
  return (
    <>
      <Table {...props} rows={props.rows.slice(0, most)} />
      {count > SHOWN_AT_ONCE && (
        <ShowMore hidden={Math.max(count - most, 0)} onPress={() => setMost(most + SHOWN_AT_ONCE)} />
      )}
    </>
  );
}
