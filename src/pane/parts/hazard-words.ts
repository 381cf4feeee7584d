import type { Entry, Material } from '../../core/studio.ts';

/** A material and what the workbook says about its hazards. */
export interface NamedHazard {
  readonly material: string;
  readonly says: string;
}

/** What the workbook says about the hazards of materials, each once; else the cautions of the recipe it is made by. */
export function hazardsOf(materials: Iterable<Material>): NamedHazard[] {
  return [...new Set(materials)].flatMap((material) => {
    const says = material.record.hazards ?? material.recipe?.record.cautions ?? null;
    return says === null ? [] : [{ material: material.name, says }];
  });
}

/** The same for what log entries take by the rates of their treatments. */
export function hazardsOfEntries(entries: readonly Entry[]): NamedHazard[] {
  return hazardsOf(entries.flatMap(({ treatment }) => treatment.rates.map(({ material }) => material)));
}
