import type { Studio } from '../../core/studio.ts';

export interface FirstStep {
  readonly title: string;
  readonly text: string;
}

/** What to fill in first, as long as it is missing: materials, then lots, then jobs. */
export function firstSteps({ materials, lots, jobs }: Studio): FirstStep[] {
  const steps: FirstStep[] = [];
  if (materials.length === 0) {
    steps.push({
      title: 'No materials yet',
      text: 'In the tab Materials, give each thing that you keep a row: its name, its kind and the unit you count it in.',
    });
  }
  if (lots.length === 0) {
    steps.push({
      title: 'No lots yet',
      text: 'In the stock tabs (Tissue, Paste, Buffers, …), give each jar, pack and batch on the shelf a row: its material, when it came in, and how much.',
    });
  }
  if (jobs.length === 0) {
    steps.push({
      title: 'No jobs yet',
      text: 'In the tab Jobs, give each commission a row. Work that is nobody’s goes to the job STUDIO, which needs no row.',
    });
  }
  return steps;
}
