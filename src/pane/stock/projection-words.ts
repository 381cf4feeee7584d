import { spokenDay } from '../../core/day.ts';
import { plannedWords } from '../../core/forecast/planned-words.ts';
import type { MaterialPlan } from '../../core/planning/plan-answer.ts';
import type { ProjectedDay } from '../../core/projection/projection.ts';
import { isSome } from '../planning/planned-words.ts';

/** A day of a projection on which something happens, for people. */
export interface DayInWords {
  readonly day: ProjectedDay['day'];
  readonly events: readonly string[];
  readonly usable: string;
}

/** Today, the days on which something happens, and the last day. What is forecast is a little every day: that is none. */
export function eventfulDays(days: readonly ProjectedDay[], unit: string): DayInWords[] {
  return days.flatMap((day, place) => {
    const events = eventsOf(day, unit);
    const isEnd = place === 0 || place === days.length - 1;
    return events.length === 0 && !isEnd
      ? []
      : [{ day: day.day, events, usable: plannedWords(day.usable, unit) }];
  });
}

function eventsOf({ planned, arrived, made, wentOff, short }: ProjectedDay, unit: string): string[] {
  const event = (quantity: number, words: string): string[] =>
    isSome(quantity) ? [`${plannedWords(quantity, unit)} ${words}`] : [];
  return [
    ...event(arrived, 'arriving'),
    ...event(made, 'made here'),
    ...event(planned, 'for what is planned'),
    ...event(wentOff, 'going off unused'),
    ...event(short, 'missing'),
  ];
}

/** What the chart of a projection shows, in sentences. */
export function chartInWords({ unit, usable, level, projection }: MaterialPlan): string {
  const { days, firstShort } = projection;
  const [first] = days;
  const last = days.at(-1);
  if (first === undefined || last === undefined) return '';
  return [
    `What is usable from ${spokenDay(first.day)} to ${spokenDay(last.day)}:`,
    `${plannedWords(usable, unit)} today, ${plannedWords(last.usable, unit)} on the last day.`,
    firstShort === null ? 'Nothing is missing until then.' : `It runs out on ${spokenDay(firstShort.day)}.`,
    isSome(level.level) ? `Order when down to ${plannedWords(level.level, unit)}.` : '',
    'The table below says the same day by day.',
  ]
    .filter((each) => each !== '')
    .join(' ');
}
