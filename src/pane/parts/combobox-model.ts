import { nearest } from '../../actions/nearest-name.ts';
import { keyOf } from '../../core/identifier.ts';

/** Something that a combobox offers. */
export interface ComboboxOption {
  /** What stands in the field once it is taken; it is told apart by this, letter case ignored. */
  readonly value: string;
  /** What the list shows instead of the value. */
  readonly label?: string;
  /** A second line below it. */
  readonly detail?: string;
  /** Why it would not be picked by rule: it is shown as a caution. */
  readonly doubt?: string;
}

/** How many options are shown at once; with more than that, she types on. */
export const MOST_SHOWN = 50;

const PAGE = 10;
/** With fewer matches than these, names that are nearly the same are offered as well. */
const FEW_MATCHES = 3;
/** Shorter words are like too many others. */
const SHORTEST_NEAR = 3;

/** What the list shows, and how many more there are. */
export interface Shown {
  readonly options: readonly ComboboxOption[];
  readonly more: number;
}

/** The option whose value (or label) is what was typed or scanned, letter case and spaces around it ignored. */
export function exactOption(options: readonly ComboboxOption[], text: string): ComboboxOption | null {
  const key = keyOf(text);
  if (key === '') return null;
  return (
    options.find(({ value }) => keyOf(value) === key) ??
    options.find(({ label }) => label !== undefined && keyOf(label) === key) ??
    null
  );
}

/**
 * The options for what was typed: first the exact one, then those that begin so, those with words that begin so,
 * those that hold it, those whose second line has such words; where these are few, names that are nearly the same.
 * Within each of these the given order stays.
 */
export function matchingOptions(options: readonly ComboboxOption[], text: string): Shown {
  const key = keyOf(text);
  if (key === '') return cut(options);
  const tokens = wordsOf(key);
  const ranked: ComboboxOption[][] = [[], [], [], [], []];
  for (const option of options) {
    const rank = rankOf(option, key, tokens);
    if (rank !== null) ranked[rank]?.push(option);
  }
  const found = ranked.flat();
  const isExact = (ranked[0]?.length ?? 0) > 0;
  if (isExact || found.length >= FEW_MATCHES || key.length < SHORTEST_NEAR) return cut(found);
  const names = nearest(
    text,
    options.map(({ value }) => value),
  );
  const near = options.filter((option) => names.includes(option.value) && !found.includes(option));
  return cut([...found, ...near]);
}

function cut(options: readonly ComboboxOption[]): Shown {
  return { options: options.slice(0, MOST_SHOWN), more: Math.max(0, options.length - MOST_SHOWN) };
}

function rankOf(option: ComboboxOption, key: string, tokens: readonly string[]): number | null {
  const value = keyOf(option.value);
  if (value === key) return 0;
  const label = keyOf(option.label ?? option.value);
  if (value.startsWith(key) || label.startsWith(key)) return 1;
  const beginsAWord = (words: readonly string[]): boolean =>
    tokens.length > 0 && tokens.every((token) => words.some((word) => word.startsWith(token)));
  const words = wordsOf(label);
  if (beginsAWord(words)) return 2;
  if (value.includes(key) || label.includes(key)) return 3;
  return beginsAWord([...words, ...wordsOf(value), ...wordsOf(keyOf(option.detail ?? ''))]) ? 4 : null;
}

function wordsOf(text: string): string[] {
  return text.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');
}

/** A combobox besides its text: whether the list is open, what it is filtered by, and what is highlighted. */
export interface ComboboxState {
  readonly open: boolean;
  /** Whether the text was typed since the list opened: only then is the list filtered by it. */
  readonly typed: boolean;
  /** The place in the list that is highlighted; -1 for none. */
  readonly active: number;
  /** Whether the highlight was moved by hand since the last letter: then Enter means it, not the text. */
  readonly moved: boolean;
}

export const CLOSED: ComboboxState = { open: false, typed: false, active: -1, moved: false };

/** What a combobox shows in a state. */
export function shownIn(state: ComboboxState, options: readonly ComboboxOption[], text: string): Shown {
  return matchingOptions(options, state.typed ? text : '');
}

/** The state after something was typed: the list is open, and the best match highlighted. */
export function afterTyping(options: readonly ComboboxOption[], text: string): ComboboxState {
  const isBlank = keyOf(text) === '';
  const { options: shown } = matchingOptions(options, text);
  return { open: true, typed: true, active: isBlank || shown.length === 0 ? -1 : 0, moved: false };
}

/** The state after the list was opened without typing: all options, the one that stands in the field highlighted. */
export function opened(options: readonly ComboboxOption[], text: string): ComboboxState {
  const { options: shown } = matchingOptions(options, '');
  const current = exactOption(options, text);
  const active = current === null ? -1 : shown.indexOf(current);
  return { open: true, typed: false, active, moved: false };
}

/** A key that was pressed, as far as it matters here. */
export interface PressedKey {
  readonly key: string;
  readonly altKey: boolean;
}

/** What a key does. */
export interface KeyOutcome {
  readonly state: ComboboxState;
  /** The option that is taken; null if none is. */
  readonly take: ComboboxOption | null;
  /** Whether the field is emptied. */
  readonly clear: boolean;
  /** Whether the key has done all that it is to do: it goes no further. */
  readonly handled: boolean;
}

/** What a key does to a combobox, given the text that stands in the field at that moment. */
export function press(
  state: ComboboxState,
  pressed: PressedKey,
  options: readonly ComboboxOption[],
  text: string,
): KeyOutcome {
  const handled = (next: ComboboxState): KeyOutcome => ({
    state: next,
    take: null,
    clear: false,
    handled: true,
  });
  const shown = shownIn(state, options, text).options;
  switch (pressed.key) {
    case 'Enter':
    case 'Tab':
      return takeBy(pressed.key, state, options, shown, text);
    case 'Escape':
      if (state.open) return handled(CLOSED);
      return { state: CLOSED, take: null, clear: text !== '', handled: text !== '' };
    case 'ArrowDown':
    case 'ArrowUp':
      if (pressed.altKey) return handled(pressed.key === 'ArrowDown' ? opened(options, text) : CLOSED);
      if (!state.open) return handled(openedByArrow(pressed.key, options, text));
      return handled(moved(state, shown.length, pressed.key === 'ArrowDown' ? 1 : -1));
    case 'PageDown':
    case 'PageUp':
      if (!state.open) break;
      return handled(at(state, shown.length, state.active + (pressed.key === 'PageDown' ? PAGE : -PAGE)));
    case 'Home':
    case 'End':
      if (!state.open) break;
      return handled(at(state, shown.length, pressed.key === 'Home' ? 0 : shown.length - 1));
    default:
  }
  return { state, take: null, clear: false, handled: false };
}

/**
 * Enter takes the exact match of what was typed or scanned, unless another one was chosen by arrow since; else what
 * is highlighted. Tab takes what is highlighted in an open list, and goes on to the next field.
 */
function takeBy(
  key: 'Enter' | 'Tab',
  state: ComboboxState,
  options: readonly ComboboxOption[],
  shown: readonly ComboboxOption[],
  text: string,
): KeyOutcome {
  const highlighted = state.open ? (shown[state.active] ?? null) : null;
  const exact = state.open && state.moved ? null : exactOption(options, text);
  const take = key === 'Enter' || state.open ? (exact ?? highlighted) : null;
  const isAnswered = take !== null || state.open;
  return { state: CLOSED, take, clear: false, handled: key === 'Enter' && isAnswered };
}

function openedByArrow(
  key: 'ArrowDown' | 'ArrowUp',
  options: readonly ComboboxOption[],
  text: string,
): ComboboxState {
  const state = opened(options, text);
  const { options: shown } = matchingOptions(options, '');
  if (state.active >= 0) return state;
  return at(state, shown.length, key === 'ArrowDown' ? 0 : shown.length - 1);
}

function moved(state: ComboboxState, length: number, step: 1 | -1): ComboboxState {
  if (length === 0) return state;
  const from = state.active < 0 && step < 0 ? 0 : state.active;
  return { ...state, active: (from + step + length) % length, moved: true };
}

function at(state: ComboboxState, length: number, place: number): ComboboxState {
  return { ...state, active: Math.min(Math.max(place, 0), length - 1), moved: true };
}

/** The sentence for how many options there are that the list doesn't show; null where it shows all. */
export function moreText(more: number): string | null {
  return more === 0 ? null : `… and ${more.toLocaleString('en-GB')} more: type on`;
}
