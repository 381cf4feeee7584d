import { type IconName, iconFile } from './icons.ts';
import { element, type XmlElement, xmlText } from './xml-text.ts';

/** Where an add-in stands, and which one it is. */
export interface ManifestPlace {
  /** The address of the built folder, without a slash at its end: https://localhost:3000 */
  readonly address: string;
  /** Numbers with points between them. */
  readonly version: string;
}

/** The files of the built folder that the manifest names. */
export const MANIFEST_PATHS = {
  page: 'index.html',
  help: 'help.html',
  functionsMetadata: 'functions.json',
  functionsScript: 'functions.js',
  icons: 'icons',
} as const;

/** The add-in's own identifier, by which spreadsheet programs know it again in another version or place. */
const ID = '5ffd378b-d342-43c9-8ab1-0e7d0613be7f';

const PAGE = 'Page.Url';
const ICON_SIZES = [16, 20, 24, 32, 40, 48, 64, 80];

const DESCRIPTION =
  'Keeps the materials of a paper-conservation bench in ordinary tabs of the workbook: draws them down from the ' +
  'treatment log, says what needs attention, and costs jobs.';

interface Command {
  /** The action's name in the code, too. */
  readonly id: string;
  readonly icon: IconName;
  readonly label: string;
  readonly tip: string;
  readonly action: XmlElement;
}

const execute = (name: string): XmlElement =>
  element('Action', { 'xsi:type': 'ExecuteFunction' }, [element('FunctionName', {}, name)]);

/** The buttons of the ribbon group, in their order. */
const COMMANDS: readonly Command[] = [
  {
    id: 'openPane',
    icon: 'jar',
    label: 'Open Jarleaf',
    tip: 'Opens the pane beside the workbook: what needs attention today, the log, stock, quotes.',
    action: element('Action', { 'xsi:type': 'ShowTaskpane' }, [
      element('TaskpaneId', {}, 'jarleaf'),
      element('SourceLocation', { resid: PAGE }),
    ]),
  },
  {
    id: 'logFromRow',
    icon: 'log-from-row',
    label: 'Log from this row',
    tip: 'Starts a log entry from the row of the chosen cell: its job, item and treatment, as far as it has them.',
    action: execute('logFromRow'),
  },
  {
    id: 'checkNow',
    icon: 'check-now',
    label: 'Check now',
    tip: 'Reads the workbook again and shows what needs attention.',
    action: execute('checkNow'),
  },
];

/** The manifest of the add-in at an address, as the text of an XML file. */
export function manifestXml({ address, version }: ManifestPlace): string {
  const at = (path: string): string => `${address}/${path}`;
  const iconAt = (name: IconName, size: number): string =>
    at(`${MANIFEST_PATHS.icons}/${iconFile(name, size)}`);
  const value = (name: string, text: string): XmlElement => element(name, { DefaultValue: text });
  return xmlText(
    element(
      'OfficeApp',
      {
        xmlns: 'http://schemas.microsoft.com/office/appforoffice/1.1',
        'xmlns:xsi': 'http://www.w3.org/2001/XMLSchema-instance',
        'xmlns:bt': 'http://schemas.microsoft.com/office/officeappbasictypes/1.0',
        'xsi:type': 'TaskPaneApp',
      },
      [
        element('Id', {}, ID),
        element('Version', {}, version),
        element('ProviderName', {}, 'Jarleaf'),
        element('DefaultLocale', {}, 'en-GB'),
        value('DisplayName', 'Jarleaf'),
        value('Description', DESCRIPTION),
        value('IconUrl', iconAt('jar', 32)),
        value('HighResolutionIconUrl', iconAt('jar', 64)),
        value('SupportUrl', at(MANIFEST_PATHS.help)),
        element('AppDomains', {}, [element('AppDomain', {}, new URL(address).origin)]),
        element('Hosts', {}, [element('Host', { Name: 'Workbook' })]),
        requirements(),
        element('DefaultSettings', {}, [value('SourceLocation', at(MANIFEST_PATHS.page))]),
        element('Permissions', {}, 'ReadWriteDocument'),
        overrides(at, iconAt),
      ],
    ),
  );
}

/** What a spreadsheet program must have; whether it has custom functions is seen while running. */
function requirements(): XmlElement {
  return element('Requirements', {}, [
    element('Sets', {}, [
      element('Set', { Name: 'SharedRuntime', MinVersion: '1.1' }),
      element('Set', { Name: 'ExcelApi', MinVersion: '1.14' }),
    ]),
  ]);
}

function overrides(
  at: (path: string) => string,
  iconAt: (name: IconName, size: number) => string,
): XmlElement {
  const source = (name: string, resid: string): XmlElement =>
    element(name, {}, [element('SourceLocation', { resid })]);
  return element(
    'VersionOverrides',
    {
      xmlns: 'http://schemas.microsoft.com/office/taskpaneappversionoverrides',
      'xsi:type': 'VersionOverridesV1_0',
    },
    [
      element('Hosts', {}, [
        element('Host', { 'xsi:type': 'Workbook' }, [
          element('Runtimes', {}, [element('Runtime', { resid: PAGE, lifetime: 'long' })]),
          element('AllFormFactors', {}, [
            element('ExtensionPoint', { 'xsi:type': 'CustomFunctions' }, [
              source('Script', 'Functions.Script.Url'),
              source('Page', PAGE),
              source('Metadata', 'Functions.Metadata.Url'),
              element('Namespace', { resid: 'Functions.Namespace' }),
            ]),
          ]),
          element('DesktopFormFactor', {}, [
            element('GetStarted', {}, [
              element('Title', { resid: 'GetStarted.Title' }),
              element('Description', { resid: 'GetStarted.Description' }),
              element('LearnMoreUrl', { resid: 'Help.Url' }),
            ]),
            element('FunctionFile', { resid: PAGE }),
            element('ExtensionPoint', { 'xsi:type': 'PrimaryCommandSurface' }, [
              element('OfficeTab', { id: 'TabHome' }, [ribbonGroup()]),
            ]),
          ]),
        ]),
      ]),
      resources(at, iconAt),
    ],
  );
}

const iconId = (name: IconName, size: number): string => `Icon.${name}.${size}`;

function icon(name: IconName): XmlElement {
  return element(
    'Icon',
    {},
    ICON_SIZES.map((size) => element('bt:Image', { size: String(size), resid: iconId(name, size) })),
  );
}

function ribbonGroup(): XmlElement {
  return element('Group', { id: 'jarleaf' }, [
    element('Label', { resid: 'Group.Label' }),
    icon('jar'),
    ...COMMANDS.map((command) =>
      element('Control', { 'xsi:type': 'Button', id: command.id }, [
        element('Label', { resid: `${command.id}.Label` }),
        element('Supertip', {}, [
          element('Title', { resid: `${command.id}.Label` }),
          element('Description', { resid: `${command.id}.Tip` }),
        ]),
        icon(command.icon),
        command.action,
      ]),
    ),
  ]);
}

function resources(
  at: (path: string) => string,
  iconAt: (name: IconName, size: number) => string,
): XmlElement {
  const list = (kind: string, item: string, values: readonly (readonly [id: string, value: string])[]) =>
    element(
      kind,
      {},
      values.map(([id, text]) => element(item, { id, DefaultValue: text })),
    );
  const icons = [...new Set(COMMANDS.map((command) => command.icon))];
  return element('Resources', {}, [
    list(
      'bt:Images',
      'bt:Image',
      icons.flatMap((name) => ICON_SIZES.map((size) => [iconId(name, size), iconAt(name, size)] as const)),
    ),
    list('bt:Urls', 'bt:Url', [
      [PAGE, at(MANIFEST_PATHS.page)],
      ['Functions.Script.Url', at(MANIFEST_PATHS.functionsScript)],
      ['Functions.Metadata.Url', at(MANIFEST_PATHS.functionsMetadata)],
      ['Help.Url', at(MANIFEST_PATHS.help)],
    ]),
    list('bt:ShortStrings', 'bt:String', [
      ['Functions.Namespace', 'JARLEAF'],
      ['GetStarted.Title', 'Jarleaf is ready'],
      ['Group.Label', 'Jarleaf'],
      ...COMMANDS.map(({ id, label }) => [`${id}.Label`, label] as const),
    ]),
    list('bt:LongStrings', 'bt:String', [
      [
        'GetStarted.Description',
        'Choose Open Jarleaf on the Home tab. It reads the tables of this workbook, or sets them up where there are none.',
      ],
      ...COMMANDS.map(({ id, tip }) => [`${id}.Tip`, tip] as const),
    ]),
  ]);
}
