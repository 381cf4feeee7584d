import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { keepingFocus } from '../focus.ts';
import { Button } from '../parts/button.tsx';
import { FieldFrame } from '../parts/fields.tsx';
import { Heading } from '../parts/layout.tsx';
import { copyText } from './copy-text.ts';
import { putAway, type TextToSend as Text, textsToSend } from './ordering.ts';

/** The texts of the orders that were just placed, to be sent to the suppliers. */
export function TextsToSend() {
  return (
    <>
      {textsToSend.value.map((text) => (
        <TextToSend key={text.order} text={text} />
      ))}
    </>
  );
}

const COPIED = {
  yes: 'Copied: paste it into your letter.',
  no: 'This pane may not copy. The text is selected: press Ctrl and C, or ⌘ and C.',
} as const;

function TextToSend({ text }: { readonly text: Text }) {
  const { order, supplier } = text;
  const id = useId();
  const block = useRef<HTMLElement>(null);
  const field = useRef<HTMLTextAreaElement>(null);
  const [copied, setCopied] = useState<keyof typeof COPIED | null>(null);
  // The button that ordered it will go: what came of it is here.
  useEffect(() => block.current?.querySelector<HTMLElement>('h3')?.focus(), []);
  const title = `Text to send to ${supplier}`;
  return (
    <section class="card stack text-to-send" aria-label={title} ref={block}>
      <Heading level={3} id={`${id}-title`} focusable>
        {title}
      </Heading>
      <FieldFrame id={id} label={`Order ${order}`}>
        <textarea
          id={id}
          class="field-control"
          rows={Math.min(text.text.split('\n').length + 1, 16)}
          readOnly
          ref={field}
          value={text.text}
        />
      </FieldFrame>
      <div class="actions">
        <Button
          look="main"
          onPress={async () => {
            if (field.current !== null) setCopied((await copyText(field.current)) ? 'yes' : 'no');
          }}
        >
          Copy
        </Button>
        <Button
          look="quiet"
          label={`Put away the text of order ${order}`}
          onPress={() => keepingFocus(() => putAway(order))}
        >
          Put away
        </Button>
      </div>
      <p role="status">{copied === null ? '' : COPIED[copied]}</p>
    </section>
  );
}
