import { FOCUS_KEEPER, keepingFocus } from '../focus.ts';
import { Button } from './button.tsx';

interface ShowMoreProps {
  /** How many are not shown yet. */
  readonly hidden: number;
  readonly onPress: () => void;
}

/** A button below the first part of a long list; once all is shown, it says so and keeps the focus there. */
export function ShowMore({ hidden, onPress }: ShowMoreProps) {
  return (
    <div tabIndex={-1} {...{ [FOCUS_KEEPER]: '' }}>
      {hidden > 0 ? (
        <Button onPress={() => keepingFocus(onPress)}>{`Show more (${hidden} left)`}</Button>
      ) : (
        <p class="muted">All are shown.</p>
      )}
    </div>
  );
}
