/** What the help of every verb, and of every verb that writes, ends with. */

export const COMMON = `  --on YYYY-MM-DD   take this day as today (without it: today)
  --json            print one JSON value and nothing else
  --help            print this`;

export const WRITING = `  --out FILE2       save to FILE2 and leave FILE as it is (without it: save in place)`;
