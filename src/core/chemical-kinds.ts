import { type ChemicalKind, kindsNamed, kindsSaid } from './chemical-words.ts';
import { readHazards } from './hazard-codes.ts';
import type { MaterialKind } from './records.ts';
import type { Material } from './studio.ts';

/** What a material is by its row, or what it does by the hazard codes there. */
export type StoredKind = ChemicalKind | 'reacts with water' | 'gives off gas with acid';

/** Which words of which cell say so. */
export interface Evidence {
  readonly kind: StoredKind;
  readonly column: 'Material' | 'Composition' | 'Hazards';
  readonly words: string;
}

/** What the sentences of the statements say: H224 to H226 flammable liquid, H270 to H272 oxidizer, and so on. */
const BY_CODE: Readonly<Record<string, StoredKind>> = {
  H224: 'flammable',
  H225: 'flammable',
  H226: 'flammable',
  H260: 'reacts with water',
  H261: 'reacts with water',
  EUH014: 'reacts with water',
  H270: 'oxidiser',
  H271: 'oxidiser',
  H272: 'oxidiser',
  EUH031: 'gives off gas with acid',
  EUH032: 'gives off gas with acid',
};

/** What such a thing is or does besides, though nobody wrote it. */
const ALSO: Readonly<Partial<Record<StoredKind, readonly StoredKind[]>>> = {
  alcohol: ['flammable'],
  ammonia: ['alkali'],
  borohydride: ['reacts with water'],
  hypochlorite: ['oxidiser', 'gives off gas with acid'],
};

/** Paper and board named after acid or alkali are neither. */
const CHEMICALS: ReadonlySet<MaterialKind> = new Set(['Paste', 'Buffer', 'Sundry']);
/** For calibrating a meter, whatever its pH and what it is made of. */
const CALIBRATION = /(?<!\p{L})(?:calibrat\p{L}+|pH[\s-]+(?:buffer|standard)s?)(?!\p{L})/iu;

/**
 * What a material is by the words of its own row: Hazards, Composition, name. Its pH says nothing, nor does what it is
 * made from: a mixture is not classified. One piece of evidence per kind, the hazard codes first.
 */
export function kindsOf({ record, name }: Material): Evidence[] {
  const said: Evidence[] = codesSay(record.hazards ?? '');
  const isChemical =
    CHEMICALS.has(record.kind) && !CALIBRATION.test(name) && !CALIBRATION.test(record.description ?? '');
  if (isChemical) {
    said.push(
      ...kindsSaid(record.hazards ?? '').map((each) => ({ ...each, column: 'Hazards' as const })),
      ...kindsNamed(name).map((each) => ({ ...each, column: 'Material' as const })),
      ...kindsNamed(record.composition ?? '').map((each) => ({ ...each, column: 'Composition' as const })),
    );
  }
  said.push(
    ...said.flatMap((evidence) => (ALSO[evidence.kind] ?? []).map((kind) => ({ ...evidence, kind }))),
  );
  return said.filter(({ kind }, place) => said.findIndex((each) => each.kind === kind) === place);
}

function codesSay(hazards: string): Evidence[] {
  return readHazards(hazards)
    .codes.flatMap((code) => code.split('+'))
    .flatMap((code) => {
      const kind = BY_CODE[code.toUpperCase()];
      return kind === undefined ? [] : [{ kind, column: 'Hazards', words: code }];
    });
}
