import { useMemo } from 'preact/hooks';
import type { Studio } from '../../core/studio.ts';
import { AddByName } from '../parts/add-by-name.tsx';
import { type LinesChange, withLine } from './draft.ts';
import { materialOptions } from './log-options.ts';
import { addableMaterials, type MaterialLine } from './material-lines.ts';

export interface AddMaterialProps {
  readonly lines: readonly MaterialLine[];
  readonly studio: Studio;
  readonly change: (changed: LinesChange) => void;
}

/** Takes in a material that the rates don't name. */
export function AddMaterial({ lines, studio, change }: AddMaterialProps) {
  const options = useMemo(() => materialOptions(addableMaterials(lines, studio)), [lines, studio]);
  return (
    <AddByName
      opener="Something else was used"
      closer="Nothing else"
      label="What else was used"
      listLabel="Materials"
      hint="What is not counted is not in the list: nothing of it is drawn"
      options={options}
      onTake={(material) => change((now) => withLine(now, material, { amount: '' }, true))}
    />
  );
}
