/** What stands above each table, in a conservator's words: its title, what a row is, what Jarleaf writes. */
export const TABLE_LINES: Readonly<Record<string, readonly string[]>> = {
  TreatmentLog: [
    'Treatment log',
    "One row is one treatment on one day. Extent is a number in the treatment's own unit (cm of tear, dm² of face, spots …): see Treatments.",
    'Log every treatment here, whatever the stock says. Grey columns are written by Jarleaf: Drawn says whether its materials have been taken from stock.',
  ],
  Tissue: stockLines(
    'Tissue and repair papers',
    'Sheets count as sheets; a part of a sheet is drawn in cm2.',
  ),
  Paste: stockLines(
    'Paste and other adhesives',
    'A pot made at the bench is a lot too: name its Recipe, and Received is the day on which it was made.',
  ),
  Buffers: stockLines(
    'Buffers, solutions and chemicals',
    "Write Opened on the bottle and here. Follow the supplier's safety data sheet and local codes.",
  ),
  ReleasePaper: stockLines(
    'Release papers, webs, films, blotters and felts',
    'All that is used again is counted in uses: one press with a release paper is one use, not one sheet.',
  ),
  Housing: stockLines(
    'Films and boards for housing',
    'Sheets count as sheets; what is cut from one is drawn in cm2.',
  ),
  Sundries: stockLines('Sundries', 'Sponges, erasers, staples, thread.'),
  Jobs: [
    'Jobs',
    'One row is a commission. Stage says how far it is; plan rows of jobs Booked or On the bench are reckoned with in the stock.',
    "Work that is nobody's (samples, calibrating the meter) goes to the job STUDIO, which needs no row here.",
  ],
  Plan: [
    'Plan',
    'One row is a treatment planned for a job. Quotes are costed from these rows, and what is short for a job is seen in time.',
    'Extent as in the treatment log. What has been logged for the same job, item and treatment counts as done; or type yes into Done.',
  ],
  Materials: [
    'Materials',
    'One row is a thing that you keep. Stock unit is what its totals are counted in; lives are in days, sheet sizes in cm, Grammage in g/m².',
    "Counted no: it needs no lot and never runs short (water from the wall, swabs). Hazards holds the H-codes of the supplier's safety data sheet, and SDS checked the day on which you last looked at it.",
    'This is a first set to change as you please. It says what is usual, never that a material or a treatment is safe for an object or a person.',
  ],
  Treatments: [
    'Treatments',
    'One row is a treatment that you offer. Extent unit is your own word for what it is measured in. Times in minutes, standing times (drying, pressing) in hours.',
    "A first set to change as you please. That a treatment stands here doesn't make it right for an object: test first.",
  ],
  UsageRates: [
    'Usage rates',
    'One row is what one treatment takes of one material: (quantity per extent × extent + fixed quantity) × (1 + waste % ÷ 100).',
    'Rows of one treatment with the same Choice are alternatives: the first is taken unless you choose. Fixed per day: once for that treatment and material on a day.',
  ],
  Recipes: [
    'Recipes',
    'One row is a preparation made at the bench. Yield is what one batch gives: weigh it and correct it. Lives in days; Life cold days counts in a cold place.',
    "Read Cautions before you make one. Follow the suppliers' safety data sheets and local codes.",
  ],
  RecipeParts: ['Parts of recipes', 'One row is one ingredient of a recipe, for one batch.'],
  Suppliers: [
    'Suppliers',
    'One row is somebody who sells to you. Lead time: days from order to delivery, and by how many days it usually varies.',
  ],
  Offers: [
    'Offers',
    'One row is a pack at a price. From packs: the price holds from so many packs on (blank: from one). Checked on: when you last looked.',
  ],
  Orders: [
    'Orders',
    'One row is an order. What it brings is counted as on its way until State is Received or Cancelled.',
  ],
  OrderLines: [
    'Lines of orders',
    'One row is one material on an order: packs × pack quantity. A lot that came of it names Order and Order line.',
  ],
  Items: ['Items', 'One row is one object of several in a job.'],
  Removed: [
    'Removed from objects',
    'One row is something that was taken off an object, where it was and what became of it: staples, tape, old mends.',
  ],
  Quotes: [
    'Quotes',
    'One row is a quote as it was given; it stays as it was. Amounts in the currency of Settings.',
  ],
  QuoteLines: ['Lines of quotes', 'One row is one line of a quote; How says how its amount came about.'],
  Places: [
    'Places',
    'One row is where things stand. Cold yes, Dark yes: a preparation keeps there for its Life cold days, its Life dark days. Walking order sorts the list for a stocktake.',
  ],
  Offcuts: ['Offcuts', 'One row is a usable remnant of a sheet, in cm.'],
  Counts: [
    'Counts',
    'One row is one lot as it was found in a stocktake, and changes no figure until it is posted: then Posting says under which, and Movements has the difference. A stocktake can be stopped and taken up again.',
    'Weighed with its jar: Gross g, less Tare g of the lot. Left then and Left the day before are written by Jarleaf, so that what is entered meanwhile is reckoned with.',
  ],
  Movements: [
    'Movements',
    'One row is one change to one lot, written by Jarleaf. What is left of a lot is its quantity and these rows: none is ever changed or deleted.',
    'A mistake is undone by a row that reverses it. Use, Waste, Make and Carried lower a lot; Put back and a Count above 0 raise it.',
  ],
  Settings: [
    'Settings',
    'One row is a name and a value. Percentages as plain numbers (21 for 21 %) or as percentages; money in the currency named here.',
  ],
};

function stockLines(title: string, extra: string): readonly string[] {
  return [
    title,
    `One row is a lot: what came in together, or was made together. Quantity and Cost are of the whole lot, Quantity in Unit. ${extra}`,
    'Grey columns are written by Jarleaf. After weighing or counting, type what is there over Left. Set aside or discard a lot by its State.',
  ];
}
