import '../styles/log.css';
import '../styles/make.css';
import { useEffect } from 'preact/hooks';
import { spokenDay } from '../../core/day.ts';
import { spokenQuantity } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { RECORD_TABLES } from '../../workbook/known-tables.ts';
import { focusField } from '../focus.ts';
import { Button } from '../parts/button.tsx';
import { later } from '../parts/later.tsx';
import { Banner, Heading } from '../parts/layout.tsx';
import { openLot, waitingMake } from '../route.ts';
import { findLot } from '../stock/lot-list.ts';
import { MadeLately } from './made-lately.tsx';
import { holdsMaking, withMakePreset } from './make-draft.ts';
import { MakeForm } from './make-form.tsx';
import { backToWaiting, changeMake, lastMade, makeDraft, makeFirst, waitingDrafts } from './make-state.ts';
import { NoRecipes } from './no-recipes.tsx';

const WhenToMake = later(async () => (await import('./when-to-make.tsx')).WhenToMake, 'When to make');

/** The section Make: what is made at the bench by a recipe, and what was made and is not used up. */
export function MakeSection({ books }: { readonly books: Books }) {
  useStart();
  const { movements } = RECORD_TABLES;
  const isAbsent = !books.reading.tables.has(movements.name.toLowerCase());
  return (
    <div class="stack">
      <Heading>Make</Heading>
      <Waiting />
      <JustMade books={books} />
      {isAbsent ? (
        <div class="empty">
          <p class="empty-title">Nothing can be made yet</p>
          <p>
            {`This workbook has no table ${movements.name} that can be read, and what goes into a batch is written there.`}
          </p>
        </div>
      ) : books.ledger.studio.recipes.length === 0 ? (
        <NoRecipes books={books} />
      ) : (
        <>
          <MakeForm books={books} />
          <WhenToMake books={books} />
        </>
      )}
      <MadeLately books={books} />
    </div>
  );
}

/** Fills in what she chose elsewhere; a form that holds something waits until that is made. */
function useStart(): void {
  const preset = waitingMake.value;
  useEffect(() => {
    if (preset === null) return;
    const draft = withMakePreset(makeDraft.value, preset);
    if (holdsMaking(makeDraft.value)) makeFirst(draft);
    else changeMake(() => draft);
    waitingMake.value = null;
    focusField('make-amount');
  });
}

/** That another form waits until this is made. */
function Waiting() {
  const waiting = waitingDrafts.value.at(-1);
  if (waiting === undefined) return null;
  return (
    <Banner
      tone="note"
      title={`${waiting.recipe} waits`}
      actions={
        <Button
          onPress={() => {
            backToWaiting();
            focusField('make-recipe');
          }}
        >
          {`Back to ${waiting.recipe}`}
        </Button>
      }
    >
      Once this is made, the form for it comes back as you left it.
    </Banner>
  );
}

/** The lot that was made last, as long as something is left of it. */
function JustMade({ books }: { readonly books: Books }) {
  const made = lastMade.value;
  const lot = made === null ? undefined : findLot(books.ledger.studio.lots, made);
  const figures = books.stock.lots.find((each) => each.lot === lot);
  if (lot === undefined || figures === undefined || figures.left.compare(0) <= 0) return null;
  const until = figures.goodUntil === null ? 'keeps' : `good until ${spokenDay(figures.goodUntil)}`;
  return (
    <p class="make-made">
      <Button look="link" onPress={() => openLot(lot)}>{`Lot ${lot.name}`}</Button>
      {`: ${spokenQuantity(figures.left, lot.record.unit)} of ${lot.material.name}, ${until}.`}
    </p>
  );
}
