import { useId, useState } from 'preact/hooks';
import type { Books } from '../../session/session-state.ts';
import { Button } from '../parts/button.tsx';
import { Heading } from '../parts/layout.tsx';
import { NoticeRow } from '../parts/notice-row.tsx';
import { type NoticeGroup, type NoticeKind, shownOf } from './notice-groups.ts';
import { ThrowAway } from './throw-away.tsx';

interface GroupProps {
  readonly group: NoticeGroup;
  readonly books: Books;
}

/** The notices of one severity. */
export function NoticeGroupList({ group, books }: GroupProps) {
  const count = group.kinds.reduce((total, { notices }) => total + notices.length, 0);
  return (
    <div class={`notice-group notice-group-${group.severity}`}>
      <Heading level={3}>{`${group.title} (${count})`}</Heading>
      {group.kinds.map((kind) => (
        <KindList key={kind.code} kind={kind} books={books} />
      ))}
    </div>
  );
}

/** The notices of one kind: the first few, and a button for all. */
function KindList({ kind, books }: { readonly kind: NoticeKind; readonly books: Books }) {
  const mendable = books.readingOnly === null;
  const [all, setAll] = useState(false);
  const titleId = useId();
  const { title, notices } = kind;
  const collapsible = shownOf(notices, false).length < notices.length;
  return (
    <div class="notice-kind">
      <p class="notice-kind-title" id={titleId}>
        {title}
        {notices.length > 1 && <span class="muted">{` (${notices.length})`}</span>}
      </p>
      <ul class="notices" aria-labelledby={titleId}>
        {shownOf(notices, all).map((notice) => (
          <NoticeRow
            key={`${notice.at.place.table} ${notice.at.place.sheetRow} ${notice.at.column} ${notice.message}`}
            notice={notice}
            mendable={mendable}
          />
        ))}
      </ul>
      {collapsible && (
        <Button
          look="quiet"
          expanded={all}
          label={all ? `Show fewer: ${title}` : `Show all ${notices.length}: ${title}`}
          onPress={() => setAll(!all)}
        >
          {all ? 'Show fewer' : `Show all ${notices.length}`}
        </Button>
      )}
      {kind.code === 'expired' && mendable && <ThrowAway books={books} />}
    </div>
  );
}
