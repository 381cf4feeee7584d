import type { MaterialProblem } from './plan-problem.ts';

/**
 * The materials in such an order that whatever is made comes before what it is made of. Where recipes go round in a
 * circle, the circle is cut at the material whose row comes first.
 */
export function productsFirst(materials: readonly MaterialProblem[]): MaterialProblem[] {
  const byName = new Map(materials.map((each) => [each.material, each]));
  const done = new Set<MaterialProblem>();
  const ordered: MaterialProblem[] = [];
  const visit = (material: MaterialProblem): void => {
    if (done.has(material)) return;
    done.add(material);
    for (const part of material.recipe?.parts ?? []) {
      const ingredient = byName.get(part.material);
      if (ingredient !== undefined) visit(ingredient);
    }
    ordered.push(material);
  };
  for (const material of materials) visit(material);
  return ordered.toReversed();
}
