import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { addInVersion, developmentManifest } from '../../src/build/development-manifest.ts';
import { lintManifest } from '../../src/build/lint-manifest.ts';
import { manifestXml } from '../../src/build/manifest.ts';
import { commandsIn, projectSurroundings } from '../../src/build/manifest-surroundings.ts';
import { PROJECT_PATHS } from '../../src/build/project-paths.ts';

const GOOD = developmentManifest();
const SURROUNDINGS = projectSurroundings();

function faultsOf(xml: string): string[] {
  return lintManifest(xml, SURROUNDINGS);
}

/** The good manifest with something replaced that must be there. */
function broken(what: string | RegExp, by: string): string {
  const changed = GOOD.replace(what, () => by);
  if (changed === GOOD) throw new Error(`the manifest holds no ${what}`);
  return changed;
}

/** The good manifest with a whole element, found by how it begins, gone or replaced. */
const element = (name: string, start = ''): RegExp =>
  new RegExp(`<${name}${start}(?:[^>]*/>|[^>]*>[\\s\\S]*?</${name}>)\\n?`);

describe('the manifest', () => {
  test('manifest.xml is what the script writes, for this machine', () => {
    expect(readFileSync(PROJECT_PATHS.manifest, 'utf8')).toBe(GOOD);
  });

  test('has no fault, here and where it will stand', () => {
    expect(faultsOf(GOOD)).toEqual([]);
    const elsewhere = manifestXml({
      address: 'https://studio.example/tools/jarleaf',
      version: addInVersion(),
    });
    expect(faultsOf(elsewhere)).toEqual([]);
    expect(elsewhere).not.toContain('localhost');
    expect(elsewhere).toContain('<AppDomain>https://studio.example</AppDomain>');
  });

  test('characters that mean something in XML are written so that they don’t', () => {
    const xml = manifestXml({ address: 'https://studio.example/a&b"<c>', version: '1.0' });
    expect(xml).toContain('https://studio.example/a&amp;b&quot;&lt;c&gt;/index.html');
    expect(faultsOf(xml)).toEqual([]);
  });

  test('names the commands that the code is associated with', () => {
    expect([...SURROUNDINGS.commands].toSorted()).toEqual(['checkNow', 'logFromRow']);
    expect(commandsIn(`Office.actions.associate(\n  "one", f); Office.actions.associate('two', g)`)).toEqual([
      'one',
      'two',
    ]);
  });
});

describe('a fault of the manifest is found', () => {
  const long = (length: number): string => 'x'.repeat(length);

  test.each<[what: string, xml: string, fault: string]>([
    ['an element left open', GOOD.replace('</OfficeApp>', ''), 'not well-formed'],
    ['nothing at all', '', 'not well-formed'],
    [
      'another kind of add-in',
      broken('"TaskPaneApp"', '"MailApp"'),
      'OfficeApp of type TaskPaneApp is right',
    ],
    ['another document', '<Manifest/>', 'the root is Manifest'],

    ['no element where one must be', broken(element('Permissions'), ''), 'OfficeApp lacks Permissions'],
    ['no requirements', broken(element('Requirements'), ''), 'OfficeApp lacks Requirements'],
    ['no group label', broken('<Label resid="Group.Label"/>', ''), 'ov:Group lacks ov:Label'],
    [
      'two elements the wrong way round',
      broken(/(<Id>.*<\/Id>)\s*(<Version>.*<\/Version>)/, '<Version>1.0</Version><Id>0</Id>'),
      'Id stands too late in OfficeApp',
    ],
    [
      'the runtimes after the functions',
      broken(element('Runtimes'), '').replace(
        '</AllFormFactors>',
        '</AllFormFactors><Runtimes><Runtime resid="Page.Url" lifetime="long"/></Runtimes>',
      ),
      'ov:Runtimes stands too late in ov:Host',
    ],
    [
      'an element twice',
      broken('<FunctionFile', '<FunctionFile resid="Page.Url"/><FunctionFile'),
      'a second ov:FunctionFile',
    ],
    [
      'an element that is none',
      broken('<Permissions>', '<Licence/><Permissions>'),
      'Licence may not stand in OfficeApp',
    ],
    [
      'an element of another namespace',
      broken('<bt:Urls>', '<Urls/><bt:Urls>'),
      'ov:Urls may not stand in ov:Resources',
    ],
    [
      'a kind of action that is none',
      broken('"ShowTaskpane"', '"OpenPane"'),
      'ov:Action OpenPane is not a kind',
    ],

    [
      'a reference to nothing',
      broken('<Label resid="Group.Label"/>', '<Label resid="Group.Lable"/>'),
      'no resource has the id Group.Lable',
    ],
    [
      'a resource that nothing refers to',
      broken('<bt:ShortStrings>', '<bt:ShortStrings><bt:String id="Spare" DefaultValue="x"/>'),
      'nothing refers to the resource Spare',
    ],
    [
      'a reference into another list',
      broken('<Label resid="Group.Label"/>', '<Label resid="openPane.Tip"/>'),
      'names openPane.Tip of LongStrings, where one of ShortStrings is right',
    ],
    [
      'a resource twice',
      broken('<bt:LongStrings>', '<bt:LongStrings><bt:String id="Group.Label" DefaultValue="x"/>'),
      'a second String has the id Group.Label',
    ],
    [
      'two buttons of one id',
      broken('id="checkNow"', 'id="openPane"'),
      'a second Control has the id openPane',
    ],
    ['a button without an id', broken(' id="checkNow"', ''), 'Control has no id'],

    ['an id of 33 characters', GOOD.replaceAll('Group.Label', long(33)), 'has 33 characters of at most 32'],
    [
      'a short text of 126',
      broken('DefaultValue="Check now"', `DefaultValue="${long(126)}"`),
      'checkNow.Label has 126 characters of at most 125',
    ],
    [
      'a long text of 251',
      broken(/(?<=id="checkNow.Tip" DefaultValue=")[^"]*/, long(251)),
      'checkNow.Tip has 251 characters of at most 250',
    ],
    ['an empty text', broken('DefaultValue="Check now"', 'DefaultValue=""'), 'checkNow.Label is empty'],
    [
      'a name of 126',
      broken('<DisplayName DefaultValue="Jarleaf"', `<DisplayName DefaultValue="${long(126)}"`),
      'DisplayName has 126 characters',
    ],
    [
      'a description of 251',
      broken(/(?<=<Description DefaultValue=")[^"]*/, long(251)),
      'Description has 251 characters',
    ],

    [
      'an address without https',
      broken('<SupportUrl DefaultValue="https:', '<SupportUrl DefaultValue="http:'),
      'http://localhost:3000/help.html is no https address',
    ],
    [
      'a resource without https',
      broken('id="Help.Url" DefaultValue="https:', 'id="Help.Url" DefaultValue="http:'),
      'is no https address',
    ],
    [
      'a domain without https',
      broken('<AppDomain>https://localhost:3000', '<AppDomain>localhost'),
      'localhost is no https address',
    ],
    [
      'what is no address',
      broken(
        '<SupportUrl DefaultValue="https://localhost:3000/help.html"',
        '<SupportUrl DefaultValue="help"',
      ),
      'help is no https address',
    ],

    [
      'an icon that is not there',
      broken(
        'id="Icon.jar.16" DefaultValue="https://localhost:3000/icons/jar-16',
        'id="Icon.jar.16" DefaultValue="https://localhost:3000/icons/pot-16',
      ),
      'there is no picture https://localhost:3000/icons/pot-16.png',
    ],
    [
      'an icon of another site',
      broken(
        '<IconUrl DefaultValue="https://localhost:3000',
        '<IconUrl DefaultValue="https://elsewhere.example',
      ),
      'there is no picture https://elsewhere.example',
    ],
    [
      'an icon of another size',
      broken(
        '<IconUrl DefaultValue="https://localhost:3000/icons/jar-32',
        '<IconUrl DefaultValue="https://localhost:3000/icons/jar-40',
      ),
      'jar-40.png is 40 pixels wide, not 32',
    ],
    [
      'the large icon in another size',
      broken(
        '<HighResolutionIconUrl DefaultValue="https://localhost:3000/icons/jar-64',
        '<HighResolutionIconUrl DefaultValue="https://localhost:3000/icons/jar-80',
      ),
      'jar-80.png is 80 pixels wide, not 64',
    ],
    [
      'sizes mixed up',
      broken('<bt:Image size="16" resid="Icon.jar.16"/>', '<bt:Image size="16" resid="Icon.jar.20"/>'),
      'jar-20.png is 20 pixels wide, not 16',
    ],

    ['an Id that is none', broken(/(?<=<Id>)[^<]*/, 'jarleaf'), 'Id holds jarleaf'],
    ['a version with a word', broken(/(?<=<Version>)[^<]*/, '1.0-beta'), 'Version holds 1.0-beta'],
    ['a version of five numbers', broken(/(?<=<Version>)[^<]*/, '1.2.3.4.5'), 'Version holds 1.2.3.4.5'],
    ['a language that is none', broken('en-GB', 'English'), 'DefaultLocale holds English'],
    [
      'a permission that is none',
      broken('ReadWriteDocument', 'ReadWriteMailbox'),
      'Permissions holds ReadWriteMailbox',
    ],
    ['another host', broken('<Host Name="Workbook"/>', '<Host Name="Document"/>'), 'Document is no host'],
    [
      'another host for the buttons',
      broken('<Host xsi:type="Workbook">', '<Host xsi:type="Presentation">'),
      'Presentation is no host',
    ],
    [
      'a requirement without a version',
      broken(' MinVersion="1.14"', ''),
      'the requirement set ExcelApi has no version',
    ],
    [
      'no requirement of a shared runtime',
      broken('<Set Name="SharedRuntime" MinVersion="1.1"/>', ''),
      'the requirement set SharedRuntime is not asked for',
    ],

    [
      'a runtime that ends',
      broken('lifetime="long"', 'lifetime="short"'),
      "the runtime's lifetime is not long",
    ],
    [
      'functions on another page',
      broken('<FunctionFile resid="Page.Url"/>', '<FunctionFile resid="Help.Url"/>'),
      'FunctionFile names Help.Url',
    ],
    [
      'a pane on another page',
      broken(/(?<=<TaskpaneId>jarleaf<\/TaskpaneId>\s*<SourceLocation resid=")[^"]*/, 'Help.Url'),
      'Action names Help.Url',
    ],
    [
      'custom functions on another page',
      broken(/(?<=<Page>\s*<SourceLocation resid=")[^"]*/, 'Help.Url'),
      'Page names Help.Url',
    ],
    [
      'another page without buttons',
      broken(
        /(?<=<DefaultSettings>\s*<SourceLocation DefaultValue=")[^"]*/,
        'https://localhost:3000/help.html',
      ),
      'DefaultSettings names https://localhost:3000/help.html',
    ],

    [
      'a command that no code knows',
      broken('<FunctionName>checkNow', '<FunctionName>checkSoon'),
      'no code is associated with the command checkSoon',
    ],
    [
      'a command that no button carries out',
      broken('<FunctionName>checkNow', '<FunctionName>logFromRow'),
      'no button carries out the command checkNow',
    ],
  ])('%s', (_, xml, fault) => {
    expect(faultsOf(xml).join('\n')).toContain(fault);
  });

  test.each(['16', '32', '80'])('an icon without the size %s', (size) => {
    const xml = broken(new RegExp(`<bt:Image size="${size}" resid="Icon.jar.${size}"/>`), '');
    expect(faultsOf(xml).join('\n')).toContain(`an icon lacks the size ${size}`);
  });

  test('an icon of a size that there is not', () => {
    const xml = broken(
      '<bt:Image size="48" resid="Icon.jar.48"/>',
      '<bt:Image size="50" resid="Icon.jar.48"/>',
    );
    expect(faultsOf(xml).join('\n')).toContain('50 is no size of an icon');
  });
});
