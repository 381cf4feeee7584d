import type { Books } from '../../session/session-state.ts';
import { later } from '../parts/later.tsx';
import { Heading } from '../parts/layout.tsx';
import { openStock } from '../route.ts';
import { BackRow } from './back-row.tsx';

const CarryForm = later(async () => (await import('./carry-form.tsx')).CarryForm, 'Carrying over');

/** Begins a new workbook without what is no longer needed; the open one stays as it is. */
export function CarryPage({ books }: { readonly books: Books }) {
  return (
    <>
      <BackRow to="Closing stock" onBack={() => openStock({ kind: 'closing' })} />
      <Heading focusHome>Carry over to a new workbook</Heading>
      <p>
        Makes a new workbook without the movements that no figure rests on any more. Every lot keeps its
        identifier, quantity, cost and dates; one Carried movement stands for what had been drawn of it. This
        workbook stays as it is.
      </p>
      <CarryForm books={books} />
    </>
  );
}
