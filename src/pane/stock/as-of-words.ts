import { type Day, spokenDay } from '../../core/day.ts';

/** What stands above the figures of another day than today. */
export function otherDayWords(day: Day, today: Day): { readonly title: string; readonly text: string } {
  const when = spokenDay(day);
  return day < today
    ? {
        title: `Figures of ${when}`,
        text: 'What was there at the end of that day, by what the workbook says now. Nothing can be posted from them.',
      }
    : {
        title: `Figures for ${when}`,
        text: 'A day to come: with what is entered up to then, and nothing that is only planned. Nothing can be posted from them.',
      };
}
