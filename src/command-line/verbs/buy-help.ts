import { COMMON as COMMON_HELP, WRITING as WRITING_HELP } from '../help-parts.ts';
import { COMMON, type Options } from '../option-parts.ts';

export const BUY_OPTIONS: Options = {
  ...COMMON,
  out: { type: 'string' },
  packs: { type: 'string', multiple: true },
  order: { type: 'boolean' },
  supplier: { type: 'string', multiple: true },
};

export const BUY_HELP = `Usage: jarleaf buy FILE [options]

Says what to order now from whom: the cheapest basket that covers what is needed, with packs, price breaks, smallest
orders and carriage, never more than can be used before it goes off. Every line says why. It changes nothing unless
--order is given.

  --packs "OFFER=N" so many packs of a row of Offers, such as "Offers 7=2", or of a material, such as "gelatine=1",
                    also of one that nothing asks for now; 0 for none. Nothing else is then bought of that material,
                    and the rest is worked out around it; may be given several times
  --order           write the orders to Orders and OrderLines, save, and print the text to send
  --supplier NAME   with --order: only the order to this supplier; may be given several times
${WRITING_HELP.replace('save to', 'with --order: save to')}
${COMMON_HELP}

Ends with 0, with 1 where something that is needed can't be bought, or not in time, with 2 if nothing was done.`;
