import { orderFaults } from './manifest-order.ts';
import { lengthFaults, referenceFaults, resourcesOf } from './manifest-resources.ts';
import { allWithin, readXml, type XmlNode } from './xml-tree.ts';

/** What a manifest is held against. */
export interface ManifestSurroundings {
  /** The size in pixels of a square icon, by its path in the built folder; null where there is no such picture. */
  readonly iconSize: (path: string) => number | null;
  /** The commands that the code associates with a function. */
  readonly commands: ReadonlySet<string>;
}

const GUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const VERSION = /^\d{1,5}(?:\.\d{1,5}){0,3}$/;
const LOCALE = /^[a-z]{2,3}(?:-[A-Z]{2})?$/;
const PERMISSIONS: ReadonlySet<string> = new Set([
  'Restricted',
  'ReadDocument',
  'ReadAllDocument',
  'WriteDocument',
  'ReadWriteDocument',
]);
const ICON_SIZES: ReadonlySet<string> = new Set(['16', '20', '24', '32', '40', '48', '64', '80']);
const NEEDED_ICON_SIZES = ['16', '32', '80'];
const OWN_ICON_SIZES: Readonly<Record<string, number>> = { IconUrl: 32, HighResolutionIconUrl: 64 };
const NEEDED_SETS = ['SharedRuntime', 'ExcelApi'];
/** Elements with an address of their own. */
const ADDRESSED: ReadonlySet<string> = new Set([
  'IconUrl',
  'HighResolutionIconUrl',
  'SupportUrl',
  'SourceLocation',
  'Url',
  'Image',
]);

/** Everything that is wrong with a manifest, a sentence for each; none where a spreadsheet program can take it. */
export function lintManifest(xml: string, surroundings: ManifestSurroundings): string[] {
  let root: XmlNode;
  try {
    root = readXml(xml);
  } catch (error) {
    return [`the manifest is not well-formed XML: ${error instanceof Error ? error.message : String(error)}`];
  }
  return [
    ...rootFaults(root),
    ...orderFaults(root),
    ...referenceFaults(root),
    ...lengthFaults(root),
    ...valueFaults(root),
    ...addressFaults(root),
    ...iconFaults(root, surroundings),
    ...runtimeFaults(root),
    ...commandFaults(root, surroundings),
  ];
}

function rootFaults({ name, attributes }: XmlNode): string[] {
  const type = attributes.get('xsi:type');
  return name === 'OfficeApp' && type === 'TaskPaneApp'
    ? []
    : [`the root is ${name} of type ${type}, where OfficeApp of type TaskPaneApp is right`];
}

function valueFaults(root: XmlNode): string[] {
  const faults: string[] = [];
  const demand = (name: string, what: string, isRight: (text: string) => boolean): void => {
    for (const { text, line } of root.children.filter((each) => each.name === name)) {
      if (!isRight(text)) faults.push(`line ${line}: ${name} holds ${text}, which is no ${what}`);
    }
  };
  demand('Id', 'identifier of the form 8-4-4-4-12', (text) => GUID.test(text));
  demand('Version', 'version: up to four numbers with points between them', (text) => VERSION.test(text));
  demand('DefaultLocale', 'language, such as en-GB', (text) => LOCALE.test(text));
  demand('Permissions', 'permission', (text) => PERMISSIONS.has(text));
  const everything = allWithin(root);
  for (const { name, attributes, line } of everything) {
    const host = attributes.get('Name') ?? attributes.get('xsi:type');
    if (name === 'Host' && host !== 'Workbook')
      faults.push(`line ${line}: ${host} is no host of this add-in`);
    if (name === 'Set' && !/^\d+\.\d+$/.test(attributes.get('MinVersion') ?? '')) {
      faults.push(`line ${line}: the requirement set ${attributes.get('Name')} has no version`);
    }
  }
  const sets = everything
    .filter(({ name }) => name === 'Set')
    .map(({ attributes }) => attributes.get('Name'));
  const missing = NEEDED_SETS.filter((name) => !sets.includes(name));
  return [...faults, ...missing.map((name) => `the requirement set ${name} is not asked for`)];
}

function addressFaults(root: XmlNode): string[] {
  return allWithin(root).flatMap((node) => {
    const text = node.name === 'AppDomain' ? node.text : node.attributes.get('DefaultValue');
    if (text === undefined || !(ADDRESSED.has(node.name) || node.name === 'AppDomain')) return [];
    return URL.canParse(text) && new URL(text).protocol === 'https:'
      ? []
      : [`line ${node.line}: ${text} is no https address`];
  });
}

function iconFaults(root: XmlNode, { iconSize }: ManifestSurroundings): string[] {
  const faults: string[] = [];
  const base = root.children
    .find(({ name }) => name === 'DefaultSettings')
    ?.children[0]?.attributes.get('DefaultValue');
  const judge = (line: number, address: string | undefined, size: number): void => {
    if (address === undefined || base === undefined || !URL.canParse(base) || !URL.canParse(address)) return;
    const folder = new URL('.', base).href;
    const { href } = new URL(address);
    const real = href.startsWith(folder) ? iconSize(href.slice(folder.length)) : null;
    if (real === null) faults.push(`line ${line}: there is no picture ${address} in the built folder`);
    else if (real !== size) faults.push(`line ${line}: ${address} is ${real} pixels wide, not ${size}`);
  };
  for (const { name, attributes, line } of root.children) {
    const size = OWN_ICON_SIZES[name];
    if (size !== undefined) judge(line, attributes.get('DefaultValue'), size);
  }
  const resources = resourcesOf(root);
  for (const icon of allWithin(root).filter(({ name }) => name === 'Icon')) {
    const sizes = icon.children.map(({ attributes }) => attributes.get('size') ?? '');
    for (const size of NEEDED_ICON_SIZES) {
      if (!sizes.includes(size)) faults.push(`line ${icon.line}: an icon lacks the size ${size}`);
    }
    for (const { attributes, line } of icon.children) {
      const size = attributes.get('size') ?? '';
      if (!ICON_SIZES.has(size)) faults.push(`line ${line}: ${size} is no size of an icon`);
      judge(line, resources.get(attributes.get('resid') ?? '')?.value, Number(size));
    }
  }
  return faults;
}

/** One runtime, kept, serves pane, commands and functions, so all of them name its page. */
function runtimeFaults(root: XmlNode): string[] {
  const everything = allWithin(root);
  const runtime = everything.find(({ name }) => name === 'Runtime');
  if (runtime === undefined) return [];
  const faults =
    runtime.attributes.get('lifetime') === 'long'
      ? []
      : [`line ${runtime.line}: the runtime's lifetime is not long`];
  const resid = runtime.attributes.get('resid');
  const page = resourcesOf(root).get(resid ?? '')?.value;
  for (const node of everything) {
    const named = node.name === 'FunctionFile' ? node : node.children.find(isSourceOf(node));
    if (named === undefined) continue;
    const own = named.attributes.get('resid') ?? named.attributes.get('DefaultValue');
    if (own !== resid && own !== page) {
      faults.push(`line ${named.line}: ${node.name} names ${own}, which is not the page of the runtime`);
    }
  }
  return faults;
}

const ON_THE_PAGE: ReadonlySet<string> = new Set(['Page', 'Action', 'DefaultSettings']);
const isSourceOf =
  (parent: XmlNode) =>
  ({ name }: XmlNode): boolean =>
    name === 'SourceLocation' && ON_THE_PAGE.has(parent.name);

function commandFaults(root: XmlNode, { commands }: ManifestSurroundings): string[] {
  const named = allWithin(root).filter(({ name }) => name === 'FunctionName');
  const names = new Set(named.map(({ text }) => text));
  return [
    ...named
      .filter(({ text }) => !commands.has(text))
      .map(({ text, line }) => `line ${line}: no code is associated with the command ${text}`),
    ...[...commands]
      .filter((command) => !names.has(command))
      .map((command) => `no button carries out the command ${command}`),
  ];
}
