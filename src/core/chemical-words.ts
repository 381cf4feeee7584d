/**
 * Words by which a workbook says what a material is, as far as it matters for what it stands beside. Common names, from
 * memory; no list of names is complete, and none classifies anything.
 */

export type ChemicalKind =
  | 'acid'
  | 'alkali'
  | 'ammonia'
  | 'hypochlorite'
  | 'oxidiser'
  | 'flammable'
  | 'alcohol'
  | 'borohydride'
  | 'water';

/** A kind, and the words that say so. */
export interface SaidKind {
  readonly kind: ChemicalKind;
  readonly words: string;
}

/** Words that say outright what something is. */
const OUTRIGHT = patterns({
  acid: String.raw`(?:\p{L}+ic )?acids?`,
  alkali: 'alkalis?',
  ammonia: 'ammonia',
  hypochlorite: 'hypochlorites?',
  oxidiser: 'oxidi[sz]ers?|oxidi[sz]ing agents?|oxidants?',
  flammable: 'solvents?|flammable(?: liquids?)?',
  borohydride: 'borohydrides?',
});

/** Names of substances. */
const NAMES = patterns({
  acid: 'vinegar',
  alkali:
    'hydroxide|(?:sodium|potassium) carbonate|caustic soda|washing soda|soda ash|lye|quicklime|(?:slaked|hydrated) lime|lime ?water|calcium oxide',
  ammonia: 'ammonium hydroxide',
  hypochlorite: 'chlorine bleach',
  oxidiser:
    'peroxide|bleach|permanganate|perborate|percarbonate|persul(?:f|ph)ate|chlorites?|chlorates?|periodate|dichromate|(?:potassium|sodium|ammonium|silver) nitrate',
  flammable:
    'acetone|butanone|ethyl acetate|toluene|xylene|heptane|(?:cyclo)?hexane|white spirit|petroleum (?:ether|spirit)',
  alcohol:
    'ethanol|methanol|(?:iso)?propanol|propan-[12]-ol|[12]-propanol|butanol|alcohol|methylated spirits?',
  water: 'lime ?water|water|aqueous',
});

/** What is called an acid and is none to be kept from alkalis. */
const HARMLESS = /^(?:nucleic|poly\p{L}+) acids?$/iu;
/** Before the word: it makes something else of it (amino acid, polyvinyl alcohol). */
const MADE_ANOTHER =
  /(?:(?:amino|fatty)[\s-]|alumini?um |(?:polyvinyl|cetyl|stearyl|wool) |poly ?\((?:vinyl )?|copolymers? of [^,;]*)$/iu;
/** Before the word: it is said of something that is not there. */
const DENIED =
  /(?:^|[^\p{L}])(?:no|not|non|without|free (?:of|from)|instead of)[\s-]+(?:\p{L}+(?:\s*,\s*|\s+(?:or|and)\s+))*$/iu;
/** After the word: free of it, proof against it, made from it, or a thing named after it. */
const NAMED_AFTER =
  /^[\s-]*(?:(?:and|or)\s+\p{L}+-)?(?:free|resistant|proof|repellent|(?:in)?soluble|absorbent|reserve|esters?|salts?|copolymers?|dyes?|migration|tests?|strips?|indicators?|papers?|boards?|gloves?|brush(?:es)?|bath|filters?|colou?rs?|bottles?|dispensers?|sprayers?|lamps?|pens?)(?!\p{L})/iu;

/** From here on a clause says what to keep it from, or what it does with something else, and not what it is. */
const ADVICE =
  /(?<!\p{L})(?:from|with|contact|avoid|never|keep|store|stored|separate|separately|reacts?|liberates|releases|incompatible|do not|don['’]t)(?!\p{L}).*$/isu;

/** What the name or the Composition of a material says that it is; each kind once. */
export function kindsNamed(text: string): SaidKind[] {
  return onePerKind([...saidIn(text, OUTRIGHT), ...saidIn(text, NAMES)]);
}

/** What the words of a Hazards cell say outright that it is; advice (keep away from acids) says nothing of that. */
export function kindsSaid(text: string): SaidKind[] {
  return onePerKind(
    text.split(/[;.()\n]/u).flatMap((clause) => saidIn(clause.replace(ADVICE, ''), OUTRIGHT)),
  );
}

function patterns(
  words: Readonly<Partial<Record<ChemicalKind, string>>>,
): readonly (readonly [ChemicalKind, RegExp])[] {
  return Object.entries(words).map(
    ([kind, text]) =>
      [
        kind as ChemicalKind,
        new RegExp(String.raw`(?<![\p{L}\p{N}])(?:${text})(?![\p{L}\p{N}])`, 'giu'),
      ] as const,
  );
}

function saidIn(text: string, kinds: readonly (readonly [ChemicalKind, RegExp])[]): SaidKind[] {
  return kinds.flatMap(([kind, pattern]) =>
    [...text.matchAll(pattern)].filter((found) => isMeant(text, found)).map(([words]) => ({ kind, words })),
  );
}

function isMeant(text: string, { 0: words, index }: RegExpExecArray): boolean {
  const before = text.slice(0, index);
  return !(
    HARMLESS.test(words) ||
    MADE_ANOTHER.test(before) ||
    DENIED.test(before) ||
    NAMED_AFTER.test(text.slice(index + words.length))
  );
}

function onePerKind(said: readonly SaidKind[]): SaidKind[] {
  return said.filter(({ kind }, place) => said.findIndex((each) => each.kind === kind) === place);
}
