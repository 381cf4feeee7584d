import { containerOf, openLot } from '../../actions/open-lot.ts';
import { isoDay, spokenDay } from '../../core/day.ts';
import type { Lot } from '../../core/studio.ts';
import { spokenNumber, spokenQuantity, unitFor } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { type Deed, doing, FieldReader } from './deed.ts';

/** Whether a lot is something that is opened: what is weighed or poured, or keeps otherwise once it is open. */
export function opens({ record, material }: Lot): boolean {
  const { dimension } = record.unit;
  return dimension === 'mass' || dimension === 'volume' || material.record.lifeOpenedDays !== null;
}

/** Opening a lot, or one container of it. */
export function openDeed(lot: Lot, { ledger, today }: Books): Deed {
  const { unit } = lot.record;
  const container = containerOf(ledger.studio, lot);
  const life = lot.material.record.lifeOpenedDays;
  return {
    name: 'open',
    label: 'Open it…',
    submit: 'Open it',
    fields: [
      {
        name: 'quantity',
        label: 'How much is in what you open',
        kind: 'number',
        start: container === null ? '' : spokenNumber(container),
        suffix: unitFor('', unit),
        hint:
          container === null
            ? 'Blank for the whole lot. One container of several becomes a lot of its own.'
            : `It looks like containers of ${spokenQuantity(container, unit)}. One of them becomes a lot of its own; blank for the whole lot.`,
        optional: true,
      },
      { name: 'date', label: 'Opened on', kind: 'day', start: isoDay(today) },
    ],
    notes: life === null ? [] : [`Once open it keeps ${life === 1 ? '1 day' : `${life} days`}.`],
    read: (texts) => {
      const fields = new FieldReader(texts);
      const quantity = fields.number('quantity');
      const date = fields.day('date', today);
      return (
        fields.problems ??
        doing(
          'Opening it',
          (snapshot, day, random) =>
            openLot(snapshot, { lot: lot.name, quantity, unit: null, date, by: null }, day, random),
          ({ opened }) =>
            opened.name === lot.name
              ? `Opened: lot ${lot.name}, on ${spokenDay(date)}.`
              : `Opened: ${spokenQuantity(opened.record.quantity, opened.record.unit)} of lot ${lot.name}, which is lot ${opened.name} now.`,
        )
      );
    },
  };
}
