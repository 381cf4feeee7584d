import type { Books } from '../../session/session-state.ts';
import { firstSteps } from './what-to-fill-in.ts';

/** What a workbook that has just been set up still lacks, and where it goes. */
export function FirstSteps({ books }: { readonly books: Books }) {
  const steps = firstSteps(books.ledger.studio);
  if (steps.length === 0) return null;
  return (
    <div class="empty">
      {steps.map(({ title, text }) => (
        <div key={title}>
          <p class="empty-title">{title}</p>
          <p>{text}</p>
        </div>
      ))}
    </div>
  );
}
