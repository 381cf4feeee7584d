import { type Evidence, kindsOf, type StoredKind } from './chemical-kinds.ts';
import type { Day } from './day.ts';
import { keyOf } from './identifier.ts';
import { accountIn, type Ledger } from './ledger.ts';
import { leftOn } from './lot-account.ts';
import { isHere } from './lot-notices.ts';
import { compareText, type Notice, notice } from './notice.ts';
import type { Lot, Material } from './studio.ts';

/** Two kinds of material that must not share a place. */
interface Pair {
  readonly kinds: readonly [StoredKind, StoredKind];
  /** How the two are called together. */
  readonly words: string;
}

/**
 * Oxidisers from flammables: International Chemical Safety Card 0044, ethanol ("Separated from strong oxidants").
 * Borohydride from water, acids, alcohols and oxidisers: card 1670. Calcium hydroxide from strong acids: card 0408 and
 * suppliers' sheets. Gas with acid: what the statements EUH031 and EUH032 say. Ammonia from hypochlorite: common
 * practice, no source.
 */
const APART: readonly Pair[] = [
  { kinds: ['acid', 'alkali'], words: 'an acid and an alkali' },
  { kinds: ['oxidiser', 'flammable'], words: 'an oxidiser and a solvent or other flammable liquid' },
  { kinds: ['reacts with water', 'water'], words: 'something that reacts with water, and water' },
  { kinds: ['borohydride', 'acid'], words: 'a borohydride and an acid' },
  { kinds: ['borohydride', 'alcohol'], words: 'a borohydride and an alcohol' },
  { kinds: ['borohydride', 'oxidiser'], words: 'a borohydride and an oxidiser' },
  { kinds: ['ammonia', 'hypochlorite'], words: 'ammonia and a hypochlorite' },
  {
    kinds: ['gives off gas with acid', 'acid'],
    words: 'something that gives off toxic gas with acids, and an acid',
  },
];

/** A material at a place, with the lots of it there. */
interface Stored {
  readonly material: Material;
  readonly lots: Lot[];
  readonly kinds: readonly Evidence[];
}

/**
 * The notices about materials that share a place and must not, on a day: of both something is left there, received
 * and not discarded. One notice per place and pair; it names the words that say what each is, and judges nothing else.
 */
export function storedTogether(ledger: Ledger, today: Day): Notice[] {
  const kindsKnown = new Map<Material, readonly Evidence[]>();
  const places = new Map<string, Map<Material, Stored>>();
  for (const lot of ledger.studio.lots) {
    const { storedAt } = lot.record;
    if (storedAt === null || !isLeft(ledger, lot, today)) continue;
    const { material } = lot;
    const kinds = kindsKnown.get(material) ?? kindsOf(material);
    kindsKnown.set(material, kinds);
    if (kinds.length === 0) continue;
    const here = places.get(keyOf(storedAt)) ?? new Map<Material, Stored>();
    places.set(keyOf(storedAt), here);
    const stored = here.get(material);
    if (stored === undefined) here.set(material, { material, lots: [lot], kinds });
    else stored.lots.push(lot);
  }
  return [...places.values()].flatMap((here) => {
    const stored = [...here.values()].toSorted((a, b) => compareText(a.material.name, b.material.name));
    return APART.flatMap((pair) => together(pair, stored));
  });
}

function isLeft(ledger: Ledger, lot: Lot, today: Day): boolean {
  const account = accountIn(ledger, lot);
  return isHere(account, today) && leftOn(account, today).compare(0) > 0;
}

/** A material that is both by its own row doesn't stand beside itself. */
function together({ kinds, words }: Pair, stored: readonly Stored[]): Notice[] {
  const [some, others] = kinds.map((kind) => stored.filter((each) => evidenceOf(each, kind) !== undefined));
  if (some === undefined || others === undefined) return [];
  const firsts = some.filter((one) => others.some((other) => other !== one));
  const seconds = others.filter((other) => some.some((one) => one !== other));
  const [first] = firsts;
  const [lot] = first?.lots ?? [];
  if (first === undefined || lot === undefined) return [];
  const place = lot.place?.storage ?? lot.record.storedAt;
  const named = (side: readonly Stored[], kind: StoredKind): string =>
    side.map((each) => spoken(each, evidenceOf(each, kind))).join(', ');
  const message =
    `${place}: ${words} must not stand together. Here: ${named(firsts, kinds[0])} beside ${named(seconds, kinds[1])}. ` +
    'That goes by these words and classifies nothing: read the suppliers’ safety data sheets, and store them by these, your local codes and licensed practice.';
  const row = lot.place ?? lot.record;
  return [notice('hazard', place, row, 'Place', message)];
}

function evidenceOf({ kinds }: Stored, kind: StoredKind): Evidence | undefined {
  return kinds.find((each) => each.kind === kind);
}

/** Ethanol (lot E-1; Hazards says “H225”). */
function spoken({ material, lots }: Stored, evidence: Evidence | undefined): string {
  const which = `${lots.length === 1 ? 'lot' : 'lots'} ${lots.map(({ name }) => name).join(', ')}`;
  const why = evidence === undefined ? '' : `; ${evidence.column} says “${evidence.words}”`;
  return `${material.name} (${which}${why})`;
}
