import { describe, expect, test } from 'vitest';
import { projectionTab } from '../../src/actions/projection-tab.ts';
import { serialOfDay } from '../../src/core/serial-date.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import { chartsIn } from '../helpers/charts-in-file.ts';
import { materialIn, planInNode } from './helpers/plan-in-node.ts';
import { PreviewPage } from './helpers/preview-page.ts';
import { MODES } from './helpers/preview-site.ts';
import { sampleSnapshot } from './helpers/studio-in-node.ts';

/** A material of which something goes off, so that the chart has more than one line to tell apart. */
const PLAN = materialIn(planInNode(sampleSnapshot('demo-studio.xlsx')), 'wheat starch paste');

describe.each(MODES)('a chart in the workbook, by keyboard, %s', (mode) => {
  test('is on a tab of its own, is shown, and stands in the file that is saved', async () => {
    const preview = await PreviewPage.open(mode);
    await preview.goTo('pane');
    const keys = preview.paneKeys;
    await keys.openSection('Stock');
    await keys.activate({ role: 'button', name: PLAN.material });
    await preview.frame.getByRole('button', { name: 'Chart in the workbook' }).waitFor();
    await keys.activate({ role: 'button', name: 'Chart in the workbook' });
    const tab = `${PLAN.material} outlook`;
    await preview.paneSays(`Chart of ${PLAN.material} on the tab ${tab}.`);
    await preview.page.getByRole('tab', { name: tab, selected: true }).waitFor();
    await preview.page.locator('.status-size').filter({ hasText: 'A chart stands on this tab' }).waitFor();
    expect(await preview.violations()).toEqual([]);

    const { bytes } = await preview.save();
    const wanted = projectionTab(PLAN.material, PLAN.unit, PLAN.projection, PLAN.level.level).table;
    expect(wanted.chart?.series.length).toBeGreaterThan(1);
    const [chart, ...others] = await chartsIn(bytes);
    expect(others).toEqual([]);
    expect(chart).toMatchObject({ tab, title: wanted.chart?.title });
    expect(chart?.series.map(({ name }) => name)).toEqual(wanted.chart?.series);
    const { tables } = openXlsx(bytes).snapshot();
    const table = tables.find(({ name }) => name === wanted.name);
    expect(table?.columns.map(({ values }) => values[1])).toEqual(
      wanted.rows[1]?.map((cell) => {
        if (cell?.kind === 'day') return serialOfDay(cell.day, 1900);
        return cell?.kind === 'number' ? cell.number : null;
      }),
    );
    await preview.close();
  });
});
