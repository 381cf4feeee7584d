import { bringBack, retireSheet, setWet } from '../../actions/reuse-lot.ts';
import { isoDay } from '../../core/day.ts';
import type { Lot } from '../../core/studio.ts';
import { isSiliconeCoated, USE, usesOfUnit } from '../../core/uses.ts';
import { spokenQuantity, unitFor } from '../../core/wording.ts';
import type { Books } from '../../session/session-state.ts';
import { type Deed, type DeedField, doing, FieldReader } from './deed.ts';

/** One of what a lot is kept in: a sheet, or one. */
function oneOf({ record }: Lot): string {
  return record.unit.dimension === 'sheet' ? 'a sheet' : 'one';
}

function dayField(label: string, { today }: Books): DeedField {
  return { name: 'date', label, kind: 'day', start: isoDay(today) };
}

/** A sheet that is spoilt before all its uses are had. */
export function retireDeed(lot: Lot, books: Books): Deed {
  const uses = usesOfUnit(lot);
  const ofOne = uses === null ? '' : ` of its ${spokenQuantity(uses, USE)}`;
  return {
    name: 'retire',
    label: `Take ${oneOf(lot)} out of use…`,
    submit: 'Take it out of use',
    fields: [
      {
        name: 'presses',
        label: 'How many presses it has done',
        kind: 'number',
        start: '',
        hint: `Blank where nobody knows: half${ofOne} are taken to be left.`,
        optional: true,
      },
      dayField('On', books),
    ],
    notes: ['What it had left is posted as waste: the studio’s loss, no job’s cost.'],
    read: (texts) => {
      const fields = new FieldReader(texts);
      const presses = fields.number('presses');
      const date = fields.day('date', books.today);
      return (
        fields.problems ??
        doing(
          'Taking it out of use',
          (snapshot, day, random) =>
            retireSheet(snapshot, { lot: lot.name, presses, date, by: null }, day, random),
          ({ drawing }) => {
            const wasted = drawing.movements.map(({ quantity, unit }) => spokenQuantity(quantity, unit));
            return `Out of use: ${oneOf(lot)} of lot ${lot.name}, with ${wasted.join(' and ')} left in it.`;
          },
        )
      );
    },
  };
}

/** Sheets that are out of action while they dry. */
export function wetDeed(lot: Lot, books: Books): Deed {
  return {
    name: 'wet',
    label: 'Wet: out of action…',
    submit: 'Set aside',
    fields: [
      {
        name: 'sheets',
        label: 'How many',
        kind: 'number',
        start: '',
        suffix: unitFor('', lot.material.unit),
        hint: 'Blank for the whole lot. Some of it become a lot of their own.',
        optional: true,
      },
      dayField('Since', books),
    ],
    notes: [],
    read: (texts) => {
      const fields = new FieldReader(texts);
      const sheets = fields.number('sheets');
      const date = fields.day('date', books.today);
      return (
        fields.problems ??
        doing(
          'Setting it aside',
          (snapshot, day, random) => setWet(snapshot, { lot: lot.name, sheets, date, by: null }, day, random),
          ({ wet }) =>
            wet.name === lot.name
              ? `Set aside while wet: lot ${lot.name}.`
              : `Set aside while wet: ${spokenQuantity(wet.record.quantity, wet.record.unit)} of lot ${lot.name}, which is lot ${wet.name} now.`,
        )
      );
    },
  };
}

/** Sheets that are dry or washed and can be used again. */
export function backDeed(lot: Lot, books: Books): Deed {
  const isAside = lot.record.state === 'Set aside';
  return {
    name: 'back',
    label: isAside ? 'Back in use…' : 'Dried or washed…',
    submit: isAside ? 'Put it back in use' : 'Put the uses back',
    fields: [
      {
        name: 'how',
        label: 'It was',
        kind: 'choice',
        start: 'dried',
        options: [
          { value: 'dried', label: 'dried' },
          { value: 'washed', label: 'washed and dried' },
        ],
      },
      {
        name: 'uses',
        label: 'Uses that come back',
        kind: 'number',
        start: '',
        suffix: unitFor('', USE),
        hint: isSiliconeCoated(lot.material)
          ? 'None: its silicone coating wears off and doesn’t come back'
          : 'Blank for none; at most what its presses have taken',
        optional: true,
      },
      dayField('On', books),
    ],
    notes: [],
    read: (texts) => {
      const fields = new FieldReader(texts);
      const how = fields.text('how') === 'washed' ? 'washed' : 'dried';
      const uses = fields.number('uses');
      const date = fields.day('date', books.today);
      const more = uses === null ? '' : `, ${spokenQuantity(uses, USE)} put back`;
      return (
        fields.problems ??
        doing(
          'Putting it back in use',
          (snapshot, day, random) =>
            bringBack(snapshot, { lot: lot.name, how, uses, date, by: null }, day, random),
          () => `${isAside ? 'Back in use' : 'Refreshed'}: lot ${lot.name}, ${how}${more}.`,
        )
      );
    },
  };
}
