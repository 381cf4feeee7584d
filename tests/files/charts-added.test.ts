import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createXlsx } from '../../src/files/new-xlsx.ts';
import { openXlsx } from '../../src/files/xlsx-workbook.ts';
import type { ColumnBlueprint, TabBlueprint } from '../../src/workbook/blueprint.ts';
import { chartsIn } from '../helpers/charts-in-file.ts';
import { checkPackage } from './closed-package.ts';
import {
  changedParts,
  type FixtureOptions,
  fixture,
  fixtureParts,
  numberCell,
  pack,
  unpack,
} from './fixture.ts';
import { day, lots, number, text } from './lots.ts';
import { checkFile } from './well-formed.ts';

function figures(
  name: string,
  table = 'Projection_x',
  along: ColumnBlueprint['format'] = 'day',
): TabBlueprint {
  const rows = [20_000, 20_001, 20_002].map((each, place) => [
    along === 'day' ? day(each) : text(`week ${place}`),
    place === 1 ? null : number(place + 0.5),
  ]);
  return {
    name,
    table: {
      name: table,
      columns: [
        { header: 'Along', width: 12, format: along },
        { header: 'Usable', width: 10, format: 'number' },
      ],
      rows,
      chart: { title: `Chart ${name}`, kind: 'line', categories: 'Along', series: ['Usable'] },
    },
  };
}

/** A workbook with a drawing and charts already, whose parts are numbered in whatever way. */
function drawn(numbers: readonly number[], rest: Partial<FixtureOptions> = {}): FixtureOptions {
  const parts: Record<string, string> = {};
  const types: Record<string, string> = {};
  const office = rest.strict
    ? 'http://purl.oclc.org/ooxml/officeDocument/relationships'
    : 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
  const links = numbers.map((own, place) => {
    parts[`xl/charts/chart${own}.xml`] = `<c:chartSpace xmlns:c="x"><c:f>Hers!$A$1:$A$2</c:f></c:chartSpace>`;
    types[`xl/charts/chart${own}.xml`] = 'application/vnd.openxmlformats-officedocument.drawingml.chart+xml';
    return `<Relationship Id="rId${place + 1}" Type="${office}/chart" Target="../charts/chart${own}.xml"/>`;
  });
  const [drawing = 1] = numbers;
  const part = `xl/drawings/drawing${drawing}.xml`;
  parts[part] = '<xdr:wsDr xmlns:xdr="x"/>';
  types[part] = 'application/vnd.openxmlformats-officedocument.drawing+xml';
  parts[`xl/drawings/_rels/drawing${drawing}.xml.rels`] =
    `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${links.join('')}</Relationships>`;
  const { sheets, ...options } = lots(rest);
  const hers = {
    name: 'Hers',
    rows: `<row r="1">${numberCell('A1', 1)}</row><row r="2">${numberCell('A2', 2)}</row>`,
    after: '<drawing r:id="rId1"/>',
    links: [['drawing', `/${part}`]] as const,
  };
  return { ...options, sheets: [...sheets, hers], parts, types };
}

describe('a chart that comes with a tab', () => {
  it('leaves charts and drawings that are there as they were, and takes other names', async () => {
    const before = fixture(drawn([1, 2]));
    checkPackage(before);
    const workbook = openXlsx(before);
    expect(workbook.tabs().map(({ hasChart }) => hasChart)).toEqual([false, true]);
    workbook.addTabs([figures('One', 'A'), figures('Two', 'B')]);
    expect(workbook.tabs().map(({ hasChart }) => hasChart)).toEqual([false, true, true, true]);
    const after = workbook.save();
    checkFile(after);
    checkPackage(after);
    expect(changedParts(before, after)).toEqual([
      '[Content_Types].xml',
      'xl/_rels/workbook.xml.rels',
      'xl/charts/chart3.xml',
      'xl/charts/chart4.xml',
      'xl/drawings/_rels/drawing2.xml.rels',
      'xl/drawings/_rels/drawing3.xml.rels',
      'xl/drawings/drawing2.xml',
      'xl/drawings/drawing3.xml',
      'xl/styles.xml',
      'xl/tables/table2.xml',
      'xl/tables/table3.xml',
      'xl/workbook.xml',
      'xl/worksheets/_rels/sheet3.xml.rels',
      'xl/worksheets/_rels/sheet4.xml.rels',
      'xl/worksheets/sheet3.xml',
      'xl/worksheets/sheet4.xml',
    ]);
    const charts = (await chartsIn(after)).filter(({ tab }) => tab !== 'Hers');
    expect(charts.map(({ tab, title }) => [tab, title])).toEqual([
      ['One', 'Chart One'],
      ['Two', 'Chart Two'],
    ]);
    expect(openXlsx(after).tabs()).toEqual(workbook.tabs());
  });

  it('changes no part but those that list tabs, in any workbook', () => {
    const numbers = fc.uniqueArray(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 3 });
    const name = fc
      .string({ unit: 'grapheme', minLength: 1, maxLength: 20 })
      .map((each) => each.replace(/[\\/?*[\]:'\p{Cc}]/gu, ' '))
      .filter((each) => each.trim() !== '');
    fc.assert(
      fc.property(numbers, name, fc.boolean(), fc.boolean(), (own, tab, strict, date1904) => {
        const before = fixture(drawn(own, { strict, date1904 }));
        const workbook = openXlsx(before);
        workbook.addTabs([figures(tab)]);
        const after = workbook.save();
        checkFile(after);
        checkPackage(after);
        const known = new Set(Object.keys(unpack(before)));
        expect(changedParts(before, after).filter((part) => known.has(part))).toEqual([
          '[Content_Types].xml',
          'xl/_rels/workbook.xml.rels',
          'xl/styles.xml',
          'xl/workbook.xml',
        ]);
        expect(JSON.stringify(openXlsx(after).snapshot())).toBe(JSON.stringify(workbook.snapshot()));
      }),
      { numRuns: 60 },
    );
  });

  it('holds what it shows: days as the file counts them, texts, and no point where a cell is blank', () => {
    const chartOf = (tab: TabBlueprint, dateSystem: 1900 | 1904): string =>
      unpack(createXlsx({ tabs: [tab], dateSystem }))['xl/charts/chart1.xml'] ?? '';
    const usable =
      '<c:numCache><c:formatCode>General</c:formatCode><c:ptCount val="3"/>' +
      '<c:pt idx="0"><c:v>0.5</c:v></c:pt><c:pt idx="2"><c:v>2.5</c:v></c:pt></c:numCache>';
    for (const [dateSystem, serial] of [
      [1900, 45_569],
      [1904, 44_107],
    ] as const) {
      const chart = chartOf(figures('T'), dateSystem);
      expect(chart).toContain(`<c:pt idx="0"><c:v>${serial}</c:v></c:pt>`);
      expect(chart).toContain(`<c:date1904 val="${dateSystem === 1904 ? 1 : 0}"/>`);
      expect(chart).toContain('<c:dateAx>');
      expect(chart).toContain(usable);
    }
    const weeks = chartOf(figures('T', 'P', 'text'), 1900);
    expect(weeks).toContain('<c:strCache><c:ptCount val="3"/><c:pt idx="0"><c:v>week 0</c:v></c:pt>');
    expect(weeks).toContain('<c:catAx>');
    expect(weeks).toContain(usable);
  });

  it('is called what it can be called where its title holds what XML can’t', async () => {
    const tab = figures('T');
    const chart = {
      title: 'a\u0001b\ud800c\nd',
      kind: 'line',
      categories: 'Along',
      series: ['Usable'],
    } as const;
    const bytes = createXlsx({
      tabs: [{ ...tab, table: { ...(tab.table as never as object), chart } as never }],
    });
    checkFile(bytes);
    const [shown] = await chartsIn(bytes);
    expect(shown?.title?.replaceAll(/\s/g, ' ')).toBe('a b c d');
  });

  it('is spelt as a strict file spells it', () => {
    const workbook = openXlsx(fixture(drawn([1], { strict: true })));
    workbook.addTabs([figures('One')]);
    const parts = unpack(workbook.save());
    for (const part of [
      'xl/charts/chart2.xml',
      'xl/drawings/drawing2.xml',
      'xl/drawings/_rels/drawing2.xml.rels',
    ]) {
      expect(parts[part]).toContain('http://purl.oclc.org/ooxml/');
      expect(parts[part]).not.toMatch(/schemas\.openxmlformats\.org\/(?:drawingml|officeDocument)/);
    }
  });

  it('is well formed where the workbook declares a prefix on each tab anew', () => {
    for (const strict of [false, true]) {
      const parts = fixtureParts(drawn([1], { strict }));
      const [declaration = ''] = / xmlns:r="[^"]*"/.exec(parts['xl/workbook.xml'] ?? '') ?? [];
      const workbookPart = parts['xl/workbook.xml']
        ?.replace(declaration, '')
        .replaceAll('<sheet ', `<sheet${declaration} `);
      const before = pack({ ...parts, 'xl/workbook.xml': workbookPart ?? '' });
      checkPackage(before);
      const workbook = openXlsx(before);
      workbook.addTabs([figures('One', 'A'), figures('Two', 'B')]);
      checkPackage(workbook.save());
      expect(openXlsx(workbook.save()).tabs()).toHaveLength(4);
    }
  });

  it('follows its rows where one goes before the file is saved', async () => {
    const workbook = openXlsx(fixture(lots()));
    workbook.addTabs([figures('One')]);
    workbook.removeRows('Projection_x', 0, 1);
    const [chart] = await chartsIn(workbook.save());
    expect(chart?.series[0]).toMatchObject({ values: 'One!B2:B3', categories: 'One!A2:A3' });
  });

  it('goes again with its tab where the workbook is brought back to what it was', () => {
    const before = fixture(drawn([1]));
    const workbook = openXlsx(before);
    const mark = workbook.mark();
    workbook.addTabs([figures('One')]);
    workbook.restore(mark);
    expect(workbook.save()).toEqual(before);
  });
});
