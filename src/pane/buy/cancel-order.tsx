import { useEffect, useRef } from 'preact/hooks';
import { cancelOrder } from '../../actions/cancel-order.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { useEscape } from '../parts/use-escape.ts';

interface CancelOrderProps {
  readonly order: string;
  readonly supplier: string;
  /** What is still to come of it, in words; '' where nothing is. */
  readonly toCome: string;
  readonly onClose: () => void;
}

/** Asks once more before an order is closed of which nothing more will come. */
export function CancelOrder({ order, supplier, toCome, onClose }: CancelOrderProps) {
  const { session, act, view } = usePane();
  const yes = useRef<HTMLButtonElement>(null);
  useEffect(() => yes.current?.focus(), []);
  useEscape(true, onClose);
  return (
    <div class="log-undo">
      <p>
        {`Its State becomes Cancelled: ${toCome === '' ? 'nothing of it is' : `${toCome} will not be`} on order any ` +
          `more. Tell ${supplier} yourself.`}
      </p>
      <div class="actions">
        <Button
          buttonRef={yes}
          unavailable={view.value.busy !== null}
          label={`Cancel order ${order}`}
          onPress={() =>
            act(() =>
              session.carryOut(
                'Cancelling the order',
                (snapshot, today, random) => cancelOrder(snapshot, order, today, random),
                () => `Cancelled: order ${order} of ${supplier}.`,
              ),
            )
          }
        >
          Cancel the order
        </Button>
        <Button look="quiet" onPress={onClose}>
          Keep it on order
        </Button>
      </div>
    </div>
  );
}
