import type { PlacedNotice } from '../../actions/check-workbook.ts';
import type { Severity } from '../../core/notice.ts';
import { FOCUS_ROW } from '../focus.ts';
import { usePane } from '../pane-context.ts';
import { type LotName, openStock } from '../route.ts';
import { mendOf } from '../today/mending.ts';
import { Button } from './button.tsx';
import { Prose } from './prose.tsx';

/** How a severity is called in words, so that colour isn't all that tells. */
const SEVERITY_WORDS: Readonly<Record<Severity, string>> = {
  stop: 'Mend first',
  warn: 'Warning',
  note: 'Note',
};

export interface NoticeRowProps {
  readonly notice: PlacedNotice;
  /** False where the workbook may only be read. */
  readonly mendable?: boolean;
}

/** A notice: its sentence, its cell as a link, and a button where one mends it. An item of a list. */
export function NoticeRow({ notice, mendable = true }: NoticeRowProps) {
  const pane = usePane();
  const mend = mendable && notice.mend !== null ? mendOf(notice.mend, pane.session) : null;
  const { cell, address } = notice;
  const busy = pane.view.value.busy !== null;
  const lot = lotOf(notice);
  return (
    <li class={`notice notice-${notice.severity}`} {...{ [FOCUS_ROW]: '' }}>
      <p>
        <span class="visually-hidden">{`${SEVERITY_WORDS[notice.severity]}: `}</span>
        <Prose text={notice.message} />
      </p>
      <div class="notice-actions">
        {mend !== null && (
          <Button
            unavailable={busy}
            label={`${mend.label}: ${notice.subject}`}
            onPress={() => pane.act(mend.run)}
          >
            {mend.label}
          </Button>
        )}
        {lot !== null && (
          <Button
            look="link"
            label={`Show the lot: ${lot.name}`}
            onPress={() => openStock({ kind: 'lot', lot })}
          >
            Show the lot
          </Button>
        )}
        {cell !== null && address !== '' && (
          <Button look="link" label={`${address}, show this cell`} onPress={() => pane.goTo(cell)}>
            {address}
          </Button>
        )}
      </div>
    </li>
  );
}

/** The lot on whose page a notice is explained and can be answered; null for the others. */
function lotOf({ code, subject, at: { place } }: PlacedNotice): LotName | null {
  return code === 'ph-outside' ? { name: subject, table: place.table, sheetRow: place.sheetRow } : null;
}
