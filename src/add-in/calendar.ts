import type { Day } from '../core/day.ts';

const MILLISECONDS_A_DAY = 86_400_000;
const MILLISECONDS_A_MINUTE = 60_000;

/** The day on the calendar of this machine's place, at a moment. */
export function calendarDay(now: Date): Day {
  return Math.floor(
    (now.getTime() - now.getTimezoneOffset() * MILLISECONDS_A_MINUTE) / MILLISECONDS_A_DAY,
  ) as Day;
}

/** Calls back when another day has begun: looked at each minute, and when the page comes into view again. */
export function onNewDay(window: Window, today: () => Day, listener: () => void): void {
  let known = today();
  const look = (): void => {
    if (today() === known) return;
    known = today();
    listener();
  };
  window.setInterval(look, MILLISECONDS_A_MINUTE);
  window.document.addEventListener('visibilitychange', look);
}
