import type { Books } from '../../session/session-state.ts';
import { usePane } from '../pane-context.ts';
import { Button } from '../parts/button.tsx';
import { Banner } from '../parts/layout.tsx';
import { UpgradeBanner } from './upgrade-banner.tsx';

const LIST = new Intl.ListFormat('en-GB');

/** What holds for the whole workbook: that it may only be read, or that tables are not here yet. */
export function WorkbookBanners({ books }: { readonly books: Books }) {
  const { session, view, act } = usePane();
  const { notFollowing } = view.value;
  if (notFollowing !== null) {
    return (
      <Banner tone="warn" title="Not following the sheet">
        {`${notFollowing} What is typed in the sheet shows here after “Check now”, which tries to follow it again.`}
      </Banner>
    );
  }
  if (books.readingOnly !== null) {
    return (
      <Banner tone="warn" title="Reading only">
        {books.readingOnly}
      </Banner>
    );
  }
  if (books.absent.length === 0) return <UpgradeBanner books={books} />;
  const one = books.absent.length === 1;
  return (
    <Banner
      tone="warn"
      title={one ? 'A table is not here yet' : 'Some tables are not here yet'}
      actions={
        <Button unavailable={view.value.busy !== null} onPress={() => act(() => session.setUp())}>
          {one ? 'Set it up' : 'Set them up'}
        </Button>
      }
    >
      {`${LIST.format(books.absent)} ${one ? 'is' : 'are'} not here yet, and logging and drawing need ${one ? 'it' : 'them'}: set ${one ? 'it' : 'them'} up? What is here stays as it is.`}
    </Banner>
  );
}
