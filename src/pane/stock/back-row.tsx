import type { ComponentChildren } from 'preact';
import { Button, Icon } from '../parts/button.tsx';
import { useEscape } from '../parts/use-escape.ts';

interface BackRowProps {
  /** Where it leads: the page that this one was opened from. */
  readonly to: string;
  readonly onBack: () => void;
  /** What stands at the other end of the row. */
  readonly children?: ComponentChildren;
}

/** The first row of a page that was opened from another one: the way back, which Esc goes too. Never printed. */
export function BackRow({ to, onBack, children }: BackRowProps) {
  useEscape(true, onBack);
  return (
    <div class="head no-print">
      <Button look="quiet" class="button-back" onPress={onBack}>
        <Icon icon="back" />
        {to}
      </Button>
      {children}
    </div>
  );
}
