import { describe, expect, test } from 'vitest';
import { PreviewPage } from './helpers/preview-page.ts';

const LOOKS = ['light', 'dark'] as const;
type Look = (typeof LOOKS)[number];
const SIZES = [
  { width: 1280, height: 800 },
  { width: 800, height: 600 },
] as const;

describe.each(SIZES)('the preview at $width by $height pixels', ({ width, height }) => {
  test('has no fault that axe finds, light and dark, and nothing runs over the edge of the window', async () => {
    const preview = await PreviewPage.open('direct', { width, height });
    const { page, keys } = preview;
    const expectSound = async (looks: readonly Look[] = LOOKS): Promise<void> => {
      for (const colorScheme of looks) {
        await page.emulateMedia({ colorScheme });
        expect({ colorScheme, found: await preview.violations() }).toEqual({ colorScheme, found: [] });
      }
      const over = await page.evaluate(() => [
        document.documentElement.scrollWidth - window.innerWidth,
        document.documentElement.scrollHeight - window.innerHeight,
      ]);
      expect(over.filter((each) => each > 0)).toEqual([]);
    };
    await expectSound();
    // A formula without a result, a block of cells, something refused, and a cell that is being typed.
    await preview.goTo('cells');
    await keys.press('Control+Home');
    await page.keyboard.type('=SUM(1,2)');
    await keys.press('Enter', 'ArrowUp', 'Shift+ArrowDown', 'Shift+ArrowRight', 'Control+-');
    await preview.says('Choose cells in the rows of one table');
    await keys.press('Enter');
    await expectSound();
    await keys.press('Escape');
    await preview.goTo('bar');
    await keys.activate({ role: 'button', name: 'Keys' });
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await expectSound(['dark']);
    await preview.close();
  });
});

test('where there is room for one half only, a notice leads from the pane to the cells, and the keys with it', async () => {
  const preview = await PreviewPage.open('direct', { width: 800, height: 600 });
  const { page, keys } = preview;
  await preview.goTo('bar');
  await keys.activate({ role: 'button', name: 'Show the pane' });
  await preview.goTo('pane');
  const place = preview.frame.locator('.notice .button-link').first();
  const shown = (await place.textContent()) ?? '';
  await preview.paneKeys.activate({ role: 'button', name: `${shown}, show this cell` });
  await page.getByRole('grid').waitFor();
  await expect.poll(() => keys.isOn({ role: 'grid', name: /^Cells of the tab/ })).toBe(true);
  const [tab = '', cell = ''] = shown.split('!');
  await page.getByRole('tab', { name: tab, selected: true }).waitFor();
  expect(await page.locator('.line-address').textContent()).toBe(cell);
  await preview.close();
});
