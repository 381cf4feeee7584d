import { retestLot } from '../../actions/retest-lot.ts';
import { isoDay, spokenDay } from '../../core/day.ts';
import type { Lot } from '../../core/studio.ts';
import { spokenNumber } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { type Deed, type DeedField, doing, FieldReader } from './deed.ts';

/** A test by which a lot is good for longer, or shorter, than its limits say. */
export function retestDeed(lot: Lot, { today }: Books): Deed {
  const { kind, phLow, phHigh } = lot.material.record;
  const hasPh = kind === 'Buffer' || phLow !== null || phHigh !== null || lot.record.ph !== null;
  const ph: DeedField = {
    name: 'ph',
    label: 'pH',
    kind: 'number',
    start: lot.record.ph === null ? '' : spokenNumber(lot.record.ph),
    optional: true,
  };
  return {
    name: 'retest',
    label: 'Retested…',
    submit: 'Write it down',
    fields: [
      { name: 'on', label: 'Tested on', kind: 'day', start: isoDay(today) },
      { name: 'until', label: 'Good until', kind: 'day', start: '' },
      { name: 'by', label: 'By whom', kind: 'text', start: lot.record.retestedBy ?? '' },
      ...(hasPh ? [ph] : []),
    ],
    notes: ['It takes the place of the limits that began before the test.'],
    read: (texts) => {
      const fields = new FieldReader(texts);
      const on = fields.day('on', today);
      const until = fields.day('until', today);
      const by = fields.needed('by', 'Say who tested it.');
      const measured = fields.number('ph');
      return (
        fields.problems ??
        doing(
          'Writing the test down',
          (snapshot, day, random) =>
            retestLot(snapshot, { lot: lot.name, on, until, by, ph: measured }, day, random),
          () => `Retested: lot ${lot.name} by ${by}, good until ${spokenDay(until)}.`,
        )
      );
    },
  };
}
