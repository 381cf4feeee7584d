/** What setting up writes, in groups: the tabs, and what a person keeps there. */
export const TABS_TO_SET_UP: readonly {
  readonly what: string;
  readonly tabs: readonly string[];
}[] = [
  { what: 'What was done, on which day', tabs: ['TreatmentLog'] },
  {
    what: 'What is on the shelf: a row for each jar, pack and batch, none yet',
    tabs: ['Tissue', 'Paste', 'Buffers', 'ReleasePaper', 'Housing', 'Sundries'],
  },
  { what: 'Jobs, the objects in them, and what is planned', tabs: ['Jobs', 'Items', 'Plan', 'Removed'] },
  {
    what: 'Materials, treatments, what each treatment uses, and recipes: a first set to begin from',
    tabs: ['Materials', 'Treatments', 'UsageRates', 'Recipes', 'RecipeParts'],
  },
  {
    what: 'Suppliers, prices and orders',
    tabs: ['Suppliers', 'Offers', 'Orders', 'OrderLines'],
  },
  { what: 'Quotes as they were given', tabs: ['Quotes', 'QuoteLines'] },
  {
    what: 'Places, usable remnants, and settings such as the currency',
    tabs: ['Places', 'Offcuts', 'Settings'],
  },
  { what: 'What was taken from each lot and put back, row by row', tabs: ['Movements'] },
  { what: 'What was counted in a stocktake, until it is posted', tabs: ['Counts'] },
];
