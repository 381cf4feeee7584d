import type { Chosen } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Prose } from '../parts/prose.tsx';
import { logFrom, openLot, openMaterial, openQuote } from '../route.ts';
import { chosenWords, jobOf } from './chosen-words.ts';

/** What row is chosen in the workbook, with what can be done from there. */
export function FromTheSheet() {
  const { chosen } = usePane().view.value;
  if (chosen === null) return null;
  const { kind, name } = chosenWords(chosen);
  return (
    <aside class="from-sheet" aria-label="From the sheet">
      <p>
        <span class="muted">{`From the sheet: ${kind} `}</span>
        <Prose text={name} />
      </p>
      <div class="actions">
        <Actions chosen={chosen} />
      </div>
    </aside>
  );
}

function Actions({ chosen }: { readonly chosen: Chosen }) {
  if (chosen.kind === 'material' || chosen.kind === 'lot') {
    const open = (): void => (chosen.kind === 'lot' ? openLot(chosen.lot) : openMaterial(chosen.material));
    return <Button onPress={open}>Show in stock</Button>;
  }
  const job = jobOf(chosen);
  return (
    <>
      <Button onPress={() => logFrom(chosen)}>
        {chosen.kind === 'plan' ? 'Log this treatment' : 'Log for this job'}
      </Button>
      {job !== null && <Button onPress={() => openQuote(job)}>Quote this job</Button>}
    </>
  );
}
