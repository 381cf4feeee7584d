import { Dialog } from '../parts/layout.tsx';

const KEYS: readonly (readonly [keys: string, what: string])[] = [
  ['Esc', 'closes what is open; where nothing is, goes to the row of tabs'],
  ['← → Home End', 'on the row of tabs: to another section'],
  ['T L S M Q', 'on the row of tabs: to the section that begins with the letter'],
  ['Tab', 'from the row of tabs into the section'],
  ['Enter', 'in the field of Stock: opens the lot or the material that stands there'],
  ['Enter', 'in the field of a lot that is counted: keeps the figure and goes on to the next'],
];

interface KeysDialogProps {
  readonly open: boolean;
  readonly onClose: () => void;
}

/** Which keys do what. */
export function KeysDialog({ open, onClose }: KeysDialogProps) {
  return (
    <Dialog open={open} title="Keys" onClose={onClose}>
      <dl class="keys">
        {KEYS.map(([keys, what]) => (
          <div key={what}>
            <dt>{keys}</dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <p>
        A scanner works like a keyboard: while no field has the focus, a code that is scanned in Today or
        Stock opens its lot or material, and one that is scanned in Make the recipe by which it is made.
      </p>
    </Dialog>
  );
}
