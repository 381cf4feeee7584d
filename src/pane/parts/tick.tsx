import type { ComponentChildren } from 'preact';

interface TickProps {
  readonly checked: boolean;
  readonly onChange: (checked: boolean) => void;
  /** What is ticked, beside the box. */
  readonly children: ComponentChildren;
}

/** A box to tick, with what it is about: the browser's own. */
export function Tick({ checked, onChange, children }: TickProps) {
  return (
    <label class="tick">
      <input type="checkbox" checked={checked} onChange={(event) => onChange(event.currentTarget.checked)} />
      <span>{children}</span>
    </label>
  );
}
