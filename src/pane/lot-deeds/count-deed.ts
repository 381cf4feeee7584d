import { countNow } from '../../actions/stocktake.ts';
import type { Lot } from '../../core/studio.ts';
import { unitNamed } from '../../core/unit.ts';
import { spokenQuantity, unitFor } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { differenceWords } from '../stocktake/count-words.ts';
import { type Deed, type DeedField, doing, FieldReader } from './deed.ts';

const GRAM = unitNamed('g');

/** Whether what is left of a lot can be told by weighing its jar. */
export function isWeighed({ record, converter }: Lot): boolean {
  return record.tare !== null && converter.factor(GRAM, record.unit) !== null;
}

/** Setting what is left of a lot right by counting it, or by weighing its jar. */
export function countDeed(lot: Lot, { settings: { currency } }: Books): Deed {
  const { tare, unit } = lot.record;
  const gross: DeedField = {
    name: 'gross',
    label: 'Weight with the jar',
    kind: 'number',
    start: '',
    suffix: GRAM.name,
    hint: tare === null ? '' : `The empty jar weighs ${spokenQuantity(tare, GRAM)}`,
    optional: true,
  };
  const quantity: DeedField = {
    name: 'quantity',
    label: isWeighed(lot) ? 'Or what is left, without the jar' : 'What is left',
    kind: 'number',
    start: '',
    suffix: unitFor('', unit),
    optional: isWeighed(lot),
  };
  return {
    name: 'count',
    label: 'Set right by a count…',
    submit: 'Post the count',
    fields: isWeighed(lot) ? [gross, quantity] : [quantity],
    notes: [],
    read: (texts) => {
      const fields = new FieldReader(texts);
      const weight = fields.number('gross');
      const found = fields.number('quantity');
      if (weight === null && found === null) {
        fields.needed(
          isWeighed(lot) && fields.text('quantity') === '' ? 'gross' : 'quantity',
          'Give what is left of it.',
        );
      }
      const counted = [{ lot: lot.name, quantity: found, unit: null, gross: weight, note: null }];
      return (
        fields.problems ??
        doing(
          'Posting the count',
          (snapshot, day, random) =>
            countNow(snapshot, { stocktake: null, counted, date: day, by: null }, day, random),
          ({ differences: [difference] }) =>
            difference === undefined
              ? `Counted: lot ${lot.name}.`
              : `Counted: lot ${lot.name}, ${spokenQuantity(difference.counted, unit)}: ${differenceWords(difference, currency)}.`,
        )
      );
    },
  };
}
