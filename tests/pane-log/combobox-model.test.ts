import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  afterTyping,
  CLOSED,
  type ComboboxOption,
  type ComboboxState,
  exactOption,
  MOST_SHOWN,
  matchingOptions,
  moreText,
  opened,
  press,
  shownIn,
} from '../../src/pane/parts/combobox-model.ts';

const JOBS: readonly ComboboxOption[] = [
  { value: '26-014', detail: 'wall map of a county, On the bench' },
  { value: '26-015', detail: 'ledger of a mill, Quoted' },
  { value: '26-0150', detail: 'poster, Booked' },
  { value: 'STUDIO', label: 'STUDIO: nobody’s (samples, calibration)' },
];
const TREATMENTS = ['surface cleaning', 'washing', 'deacidifying in a bath', 'mending tears', 'bathing'].map(
  (value): ComboboxOption => ({ value }),
);

const values = (options: readonly ComboboxOption[], text: string): string[] =>
  matchingOptions(options, text).options.map(({ value }) => value);
const key = (name: string, altKey = false) => ({ key: name, altKey });

/** A field in which somebody types and presses keys. */
class Field {
  state: ComboboxState = CLOSED;
  text = '';
  readonly taken: string[] = [];
  readonly options: readonly ComboboxOption[];

  constructor(options: readonly ComboboxOption[], text = '') {
    this.options = options;
    this.text = text;
  }

  type(text: string): this {
    this.text = text;
    this.state = afterTyping(this.options, text);
    return this;
  }

  press(name: string, altKey = false): boolean {
    const outcome = press(this.state, key(name, altKey), this.options, this.text);
    this.state = outcome.state;
    if (outcome.clear) this.text = '';
    if (outcome.take !== null) {
      this.taken.push(outcome.take.value);
      this.text = outcome.take.value;
    }
    return outcome.handled;
  }

  get highlighted(): string | undefined {
    return shownIn(this.state, this.options, this.text).options[this.state.active]?.value;
  }
}

describe('which options are shown', () => {
  test('all of them, in the given order, where nothing is typed', () => {
    expect(values(TREATMENTS, ' ')).toEqual(TREATMENTS.map(({ value }) => value));
  });

  test('beginnings before beginnings of words before what merely holds it', () => {
    expect(values(TREATMENTS, 'bath')).toEqual(['bathing', 'deacidifying in a bath']);
    expect(values(TREATMENTS, 'clean')).toEqual(['surface cleaning']);
    expect(values(TREATMENTS, 'ing')).toHaveLength(5);
  });

  test('several words in any order, each by its beginning', () => {
    expect(values(TREATMENTS, 'tea mend')[0]).toBe('mending tears');
  });

  test('the second line is searched too, after the first', () => {
    expect(values(JOBS, 'mill')).toEqual(['26-015']);
    expect(values(JOBS, 'post')).toEqual(['26-0150']);
  });

  test('an exact match comes first, though others begin so', () => {
    expect(values(JOBS.toReversed(), '26-015')).toEqual(['26-015', '26-0150']);
  });

  test('a slip of the finger finds what was meant', () => {
    expect(values(TREATMENTS, 'wahsing')).toContain('washing');
    expect(values(TREATMENTS, 'xyzzy')).toEqual([]);
  });

  test('no more than fifty, and how many there are besides', () => {
    const many = Array.from({ length: 2000 }, (_, place): ComboboxOption => ({ value: `job ${place}` }));
    const shown = matchingOptions(many, 'job');
    expect(shown.options).toHaveLength(MOST_SHOWN);
    expect(moreText(shown.more)).toBe('… and 1,950 more: type on');
    expect(moreText(matchingOptions(many, 'job 1999').more)).toBeNull();
  });

  test('every option is found by its own value, first of all', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.stringMatching(/^[a-z0-9][a-z0-9 -]{0,8}$/), {
          minLength: 1,
          maxLength: 120,
          selector: (value) => value.trim().toLowerCase(),
        }),
        fc.nat(),
        (names, place) => {
          const options = names.map((value): ComboboxOption => ({ value }));
          const wanted = names[place % names.length] ?? '';
          expect(matchingOptions(options, wanted.toUpperCase()).options[0]?.value).toBe(wanted);
        },
      ),
    );
  });
});

describe('an exact option', () => {
  test('by its value or its label, letter case and spaces around ignored', () => {
    expect(exactOption(JOBS, ' studio ')?.value).toBe('STUDIO');
    expect(exactOption(JOBS, 'studio: nobody’s (samples, calibration)')?.value).toBe('STUDIO');
    expect(exactOption(JOBS, '26-01')).toBeNull();
  });

  test('nothing typed is no option, not even one without a value', () => {
    expect(exactOption([{ value: '', label: 'in draw order' }], '')).toBeNull();
  });
});

describe('keys', () => {
  test('typing highlights the best match; Enter takes it and goes no further', () => {
    const field = new Field(TREATMENTS).type('mend');
    expect(field.highlighted).toBe('mending tears');
    expect(field.press('Enter')).toBe(true);
    expect(field.taken).toEqual(['mending tears']);
    expect(field.state.open).toBe(false);
  });

  test('a scanned code with Enter takes its own option, whatever is highlighted', () => {
    const field = new Field(JOBS).type('26-015');
    // The list still stands where an earlier letter left it.
    field.state = { open: true, typed: true, active: 1, moved: false };
    expect(field.highlighted).toBe('26-0150');
    field.press('Enter');
    expect(field.taken).toEqual(['26-015']);
  });

  test('a code that comes before anything is shown is taken all the same', () => {
    const field = new Field(JOBS, '26-015');
    expect(field.press('Enter')).toBe(true);
    expect(field.taken).toEqual(['26-015']);
  });

  test('an arrow after typing means the highlighted option, though the text is another one', () => {
    const field = new Field(JOBS).type('26-015');
    field.press('ArrowDown');
    expect(field.highlighted).toBe('26-0150');
    field.press('Enter');
    expect(field.taken).toEqual(['26-0150']);
  });

  test('Tab takes what is highlighted and lets the focus go on; in a closed list it takes nothing', () => {
    const field = new Field(TREATMENTS).type('wash');
    expect(field.press('Tab')).toBe(false);
    expect(field.taken).toEqual(['washing']);
    expect(field.press('Tab')).toBe(false);
    expect(field.taken).toEqual(['washing']);
  });

  test('Enter on a closed list with nothing known in the field is left to the form', () => {
    expect(new Field(TREATMENTS).press('Enter')).toBe(false);
    expect(new Field(TREATMENTS, 'no such').press('Enter')).toBe(false);
  });

  test('Escape closes first, then clears, then is left to others', () => {
    const field = new Field(TREATMENTS).type('wash');
    expect(field.press('Escape')).toBe(true);
    expect([field.state.open, field.text]).toEqual([false, 'wash']);
    expect(field.press('Escape')).toBe(true);
    expect(field.text).toBe('');
    expect(field.press('Escape')).toBe(false);
  });

  test('an arrow opens the whole list, with what stands in the field highlighted', () => {
    const field = new Field(TREATMENTS, 'washing');
    field.press('ArrowDown');
    expect(shownIn(field.state, field.options, field.text).options).toHaveLength(5);
    expect(field.highlighted).toBe('washing');
    const empty = new Field(TREATMENTS);
    empty.press('ArrowUp');
    expect(empty.highlighted).toBe('bathing');
  });

  test('arrows go round; Home and End go to the ends of an open list only', () => {
    const field = new Field(TREATMENTS);
    expect(field.press('Home')).toBe(false);
    field.press('ArrowDown');
    expect(field.highlighted).toBe('surface cleaning');
    field.press('ArrowUp');
    expect(field.highlighted).toBe('bathing');
    field.press('ArrowDown');
    expect(field.highlighted).toBe('surface cleaning');
    field.press('End');
    expect(field.highlighted).toBe('bathing');
    field.press('Home');
    expect(field.highlighted).toBe('surface cleaning');
    field.press('PageDown');
    expect(field.highlighted).toBe('bathing');
  });

  test('Alt with the arrows opens and closes', () => {
    const field = new Field(TREATMENTS);
    field.press('ArrowDown', true);
    expect([field.state.open, field.highlighted]).toEqual([true, undefined]);
    field.press('ArrowUp', true);
    expect(field.state.open).toBe(false);
  });

  test('the list opened without typing shows all and highlights nothing unknown', () => {
    expect(opened(TREATMENTS, 'mend')).toEqual({ open: true, typed: false, active: -1, moved: false });
  });

  test('whatever is pressed, the highlight stays on what is shown', () => {
    const step = fc.oneof(
      fc.constantFrom('ArrowDown', 'ArrowUp', 'Home', 'End', 'PageDown', 'PageUp', 'Escape', 'Enter', 'Tab'),
      fc.constantFrom('', 'm', 'mend', 'ing', 'washing', 'zzzz').map((text) => ({ text })),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const field = new Field(TREATMENTS);
        for (const each of steps) {
          if (typeof each === 'string') field.press(each);
          else field.type(each.text);
          const { length } = shownIn(field.state, field.options, field.text).options;
          expect(field.state.active).toBeLessThan(Math.max(length, 1));
          expect(field.state.active).toBeGreaterThanOrEqual(-1);
          if (field.state.open && length > 0 && field.state.active >= 0)
            expect(field.highlighted).toBeDefined();
        }
        for (const taken of field.taken) expect(TREATMENTS.map(({ value }) => value)).toContain(taken);
      }),
    );
  });
});
