import { describe, expect, test } from 'vitest';
import { PanePage } from './helpers/pane-page.ts';

const LOOKS = ['light', 'dark', 'forced colours'] as const;
const WIDTHS = [320, 450] as const;

describe.each(LOOKS)('in %s', (look) => {
  test.each(WIDTHS)(
    'the pane opens at %i pixels without a fault that axe finds, and nothing runs over',
    async (width) => {
      const pane = await PanePage.open({ look, width });
      await pane.page.getByRole('tab', { name: 'Today' }).waitFor();
      expect(await pane.violations()).toEqual([]);
      expect(await pane.isTooWide()).toBe(false);
      await pane.close();
    },
  );
});
