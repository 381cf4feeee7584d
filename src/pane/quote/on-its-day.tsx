import '../styles/buy.css';
import { spokenDay } from '../../core/day.ts';
import { keyOf } from '../../core/identifier.ts';
import type { JobAnswer } from '../../core/projection/job-readiness.ts';
import type { Books } from '../../session/session-state.ts';
import { Heading } from '../parts/layout.tsx';
import { Prose } from '../parts/prose.tsx';
import { PlanProgress } from '../planning/plan-progress.tsx';
import { usePlan } from '../planning/use-plan.ts';
import { answerInWords, wantInWords } from './job-words.ts';

export interface OnItsDayProps {
  readonly books: Books;
  readonly job: string;
}

/** Whether a job can be done on its day, and what must be made or bought for it by when. */
export function OnItsDay({ books, job }: OnItsDayProps) {
  const plan = usePlan(books);
  const answer = plan?.answer.jobs.find((each) => keyOf(each.job) === keyOf(job));
  return (
    <section class="stack no-print" aria-label="Can it be done on its day?">
      <Heading level={3}>Can it be done on its day?</Heading>
      <PlanProgress books={books} />
      {plan !== null && answer === undefined && (
        <p class="muted">
          This is looked at for jobs that are booked or on the bench and have something left in the plan.
        </p>
      )}
      {answer !== undefined && <Answer answer={answer} />}
    </section>
  );
}

function Answer({ answer }: { readonly answer: JobAnswer }) {
  const { wants, obstacles, due, readyOn } = answer;
  return (
    <>
      <p class={answer.canBeDone ? 'plan-name' : 'plan-name low-mark'}>{answerInWords(answer)}</p>
      {(readyOn !== null || due !== null) && (
        <p>
          {[
            readyOn === null ? '' : `Ready on ${spokenDay(readyOn)}, drying and pressing included.`,
            due === null ? 'No day is given on which it is due.' : `Due on ${spokenDay(due)}.`,
          ].join(' ')}
        </p>
      )}
      {wants.length + obstacles.length > 0 && (
        <ul class="plain-list">
          {wants.map((want) => (
            <li
              key={`${want.material} ${want.day}`}
              class={want.tooLate || want.how === 'nowhere' ? 'low-mark' : ''}
            >
              <Prose text={wantInWords(want)} />
            </li>
          ))}
          {obstacles.map((obstacle) => (
            <li key={obstacle} class="low-mark">
              <Prose text={obstacle} />
            </li>
          ))}
        </ul>
      )}
    </>
  );
}
