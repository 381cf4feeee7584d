import { exact } from '../exact-number.ts';
import { counted, spokenNumber } from '../wording.ts';
import type { Forecast } from './choose-forecast.ts';
import type { OrderLevel } from './order-level.ts';
import { plannedWords } from './planned-words.ts';

/** Says for a person how an order level came about, and what the plain formula says beside it. */
export function orderLevelSentence(
  figures: Omit<OrderLevel, 'sentence'>,
  days: number,
  { forecast, unit }: { readonly forecast: Forecast; readonly unit: string },
): string {
  const words = (quantity: number): string => plannedWords(quantity, unit);
  const sentences = [ownLevel(figures, days, words)];
  if (forecast.demandClass === 'died away') {
    sentences.push('As use has died away, earlier use counts only as far as it is still forecast.');
  }
  if (figures.plain > 0) sentences.push(plainLevel(figures, words));
  return sentences.join(' ');
}

type Figures = Omit<OrderLevel, 'sentence'>;
type Words = (quantity: number) => string;

function ownLevel(figures: Figures, days: number, words: Words): string {
  const { level, planned, forUnplanned, keepAtLeast } = figures;
  const needed = planned + forUnplanned;
  const within = days === 0 ? 'today' : `within ${counted(days, 'day')}`;
  if (level === 0) return `Nothing will probably be used ${within}: nothing needs to be kept.`;
  if (needed === 0) return `${words(level)}, as Keep at least says; nothing will probably be used ${within}.`;
  const parts =
    planned === 0
      ? `for what may be used ${within}`
      : forUnplanned === 0
        ? `for what is planned ${within}`
        : `${words(planned)} planned ${within} and ${words(forUnplanned)} for what else may be used`;
  const reason = `${parts}, ${serviceWords(figures)}`;
  return keepAtLeast > needed
    ? `${words(level)}, as Keep at least says; ${words(needed)} would do: ${reason}.`
    : `${words(level)}: ${reason}.`;
}

function serviceWords({ measure, servicePercent }: Figures): string {
  if (servicePercent === null) return 'as much as is needed on average, as no service level is asked for';
  const percent = spokenNumber(exact(servicePercent));
  return measure === 'share served'
    ? `so that ${percent} % of what is needed is there`
    : `so that in ${percent} of 100 deliveries nothing runs out before it arrives`;
}

function plainLevel({ plain, plainChance, plainServed, measure }: Figures, words: Words): string {
  const says = `The plain formula says ${words(plain)}`;
  if (measure === 'share served') {
    return plainServed === null
      ? `${says}.`
      : `${says}, with which by its own reckoning ${ofHundred(plainServed)} % is there.`;
  }
  return `${says}, which is enough in ${ofHundred(plainChance)} of 100.`;
}

function ofHundred(share: number): string {
  return String(Number((100 * share).toFixed(1)));
}
