import type { BatchPlan } from '../../actions/make-batch.ts';
import { sum, ZERO } from '../../core/exact-number.ts';
import type { Material } from '../../core/studio.ts';
import { focusField } from '../focus.ts';
import { Button } from '../parts/button.tsx';
import { withMakePreset } from './make-draft.ts';
import { makeDraft, makeFirst } from './make-state.ts';

interface MakeFirstProps {
  readonly plan: BatchPlan;
  readonly material: Material;
}

/** Where an ingredient that is made here falls short: a button that makes what is missing first, and comes back. */
export function MakeFirst({ plan, material }: MakeFirstProps) {
  const short = plan.parts.filter((part) => part.material === material && part.missing.compare(0) > 0);
  const [first] = short;
  const recipe = first?.makeFirst ?? null;
  if (first === undefined || recipe === null) return null;
  const missing = sum(
    short.map((part) => part.missing.mul(material.converter.factor(part.unit, first.unit) ?? ZERO)),
  );
  return (
    <Button
      onPress={() => {
        const isConvertible = material.converter.factor(first.unit, recipe.record.unit) !== null;
        const amount = isConvertible ? missing : null;
        const preset = { recipe: recipe.name, amount, unit: amount === null ? null : first.unit };
        makeFirst(withMakePreset(makeDraft.value, preset));
        focusField('make-amount');
      }}
    >
      {`Make ${recipe.name} first`}
    </Button>
  );
}
