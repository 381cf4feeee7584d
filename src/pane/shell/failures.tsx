import { FOCUS_ROW, keepingFocus } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { IconButton } from '../parts/button.tsx';

/** What went wrong, until the person dismisses it. */
export function Failures() {
  const { news } = usePane();
  return (
    <div role="alert" class="failures" data-focus-scope="">
      {news.failures.value.map((failure) => (
        <div key={failure.id} class="failure" {...{ [FOCUS_ROW]: '' }}>
          <p>{failure.message}</p>
          <IconButton
            label="Dismiss"
            icon="close"
            onPress={() => keepingFocus(() => news.dismiss(failure))}
          />
        </div>
      ))}
    </div>
  );
}
