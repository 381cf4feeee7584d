import { mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import { chromium, type Page } from 'playwright-core';
import { PROJECT_PATHS } from '../../src/build/project-paths.ts';
import { buildPages, PREVIEW_FOLDERS } from '../../src/preview-server/build-pages.ts';
import { readFirstFile } from '../../src/preview-server/first-file.ts';
import { servePreview } from '../../src/preview-server/preview-server.ts';
import { findChromium, QUIET_FLAGS } from './helpers/chromium.ts';

/** Makes the pictures of the README: the sample studio in the preview, and sections of the pane. */

const FOLDER = join(PROJECT_PATHS.root, 'src/preview/pictures');
const PANE = { width: 340, height: 620 };

async function picture(page: Page, name: string): Promise<void> {
  // The pointer and the blinking of a caret are no part of a picture.
  await page.mouse.move(0, 0);
  await page.screenshot({ path: join(FOLDER, `${name}.png`), caret: 'hide', animations: 'disabled' });
}

/** Only the pane, as it stands beside a workbook. */
async function panePicture(page: Page, name: string): Promise<void> {
  const frame = page.locator('iframe');
  await frame.screenshot({ path: join(FOLDER, `${name}.png`), caret: 'hide', animations: 'disabled' });
}

async function makePictures(): Promise<void> {
  await mkdir(FOLDER, { recursive: true });
  await buildPages();
  const first = await readFirstFile(null);
  if (typeof first === 'string') throw new Error(first);
  const preview = await servePreview({ folders: PREVIEW_FOLDERS, first, office: false }, 4800);
  const browser = await chromium.launch({ executablePath: findChromium(), args: [...QUIET_FLAGS] });
  const page = await browser.newPage({
    viewport: { width: 1200, height: 720 },
    locale: 'en-GB',
    reducedMotion: 'reduce',
  });
  await page.goto(preview.address);
  const pane = page.frameLocator('iframe');
  await pane.getByRole('tab', { name: 'Today', selected: true }).waitFor();
  await pane.getByRole('heading', { name: 'To mend first' }).waitFor();
  await picture(page, 'preview');

  await page.setViewportSize({ width: 1200, height: PANE.height + 50 });
  await pane.getByRole('tab', { name: 'Log' }).click();
  await pane.getByRole('combobox', { name: 'Job' }).fill('J-2031');
  await pane.getByRole('combobox', { name: 'Job' }).press('Enter');
  await pane.getByRole('combobox', { name: 'Treatment' }).fill('mending tears');
  await pane.getByRole('combobox', { name: 'Treatment' }).press('Enter');
  await pane.getByRole('textbox', { name: 'How much' }).fill('40');
  await pane.getByText('T-008').first().waitFor();
  await panePicture(page, 'log');

  await pane.getByRole('tab', { name: 'Stock' }).click();
  await pane.getByText('kozo tissue 5 g').first().waitFor();
  await panePicture(page, 'stock');

  await pane.getByRole('tab', { name: 'Quote' }).click();
  const job = pane.getByRole('combobox', { name: 'Job' });
  await job.fill('J-2031');
  await job.press('Enter');
  await pane.getByText('Quote for J-2031').waitFor();
  await panePicture(page, 'quote');

  await pane.getByRole('tab', { name: 'Buy' }).click();
  const supplier = pane.getByRole('heading', { name: 'Bindery supplier' });
  await supplier.waitFor({ timeout: 30_000 });
  await supplier.evaluate((heading) => heading.scrollIntoView({ block: 'start' }));
  await panePicture(page, 'buy');

  await pane.getByRole('tab', { name: 'Stock' }).click();
  await pane.getByRole('button', { name: 'wheat starch', exact: true }).click();
  const outlook = pane.getByRole('img').first();
  await outlook.waitFor({ timeout: 30_000 });
  await outlook.evaluate((chart) => chart.scrollIntoView({ block: 'center' }));
  await panePicture(page, 'outlook');
  await browser.close();
  await preview.close();
}

await makePictures();
