/** Hours of a day at the bench. */
const WORKING_DAY_HOURS = 8;
const HOURS_OF_DAY = 24;

/**
 * How many days before its use something must be made that is ready so many hours after it was begun: none where it is
 * ready within a working day of 8 hours, otherwise the whole days that these hours take up. Common practice: what
 * stands overnight is made the day before.
 */
export function readyDaysOf(hours: number): number {
  return hours <= WORKING_DAY_HOURS ? 0 : Math.ceil(hours / HOURS_OF_DAY);
}
