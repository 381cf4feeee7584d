import type { XmlNode } from './xml-tree.ts';

/** The namespaces of a manifest, by the prefix that stands for them here. */
const PREFIXES: ReadonlyMap<string, string> = new Map([
  ['http://schemas.microsoft.com/office/appforoffice/1.1', ''],
  ['http://schemas.microsoft.com/office/taskpaneappversionoverrides', 'ov:'],
  ['http://schemas.microsoft.com/office/officeappbasictypes/1.0', 'bt:'],
]);

/**
 * What may stand in each element, in this order. `!` must be there, `+` once or more, `*` any number, else at most
 * once; an element that isn't listed is empty or holds text.
 * Source: the schemas OfficeAppManifestV1_1.xsd, TaskPaneAppVersionOverridesV1_0.xsd and
 * OfficeAppBasicTypesV1_0.xsd in Microsoft's documentation of Office Add-ins, with Runtimes as [MS-OWEMXML] has it;
 * left out is what this add-in has no use for.
 */
const INSIDE: Readonly<Record<string, string>> = {
  OfficeApp:
    'Id! Version! ProviderName! DefaultLocale! DisplayName! Description! IconUrl! HighResolutionIconUrl! ' +
    'SupportUrl! AppDomains Hosts! Requirements! DefaultSettings! Permissions! ov:VersionOverrides!',
  AppDomains: 'AppDomain+',
  Hosts: 'Host+',
  Requirements: 'Sets!',
  Sets: 'Set+',
  DefaultSettings: 'SourceLocation!',
  'ov:VersionOverrides': 'ov:Description ov:Requirements ov:Hosts! ov:Resources!',
  'ov:Requirements': 'bt:Sets!',
  'bt:Sets': 'bt:Set+',
  'ov:Hosts': 'ov:Host+',
  'ov:Host': 'ov:Runtimes! ov:AllFormFactors! ov:DesktopFormFactor!',
  'ov:Runtimes': 'ov:Runtime!',
  'ov:AllFormFactors': 'ov:ExtensionPoint!',
  'ov:DesktopFormFactor': 'ov:GetStarted! ov:FunctionFile! ov:ExtensionPoint+',
  'ov:GetStarted': 'ov:Title! ov:Description! ov:LearnMoreUrl!',
  'ov:ExtensionPoint CustomFunctions': 'ov:Script! ov:Page! ov:Metadata! ov:Namespace!',
  'ov:Script': 'ov:SourceLocation!',
  'ov:Page': 'ov:SourceLocation!',
  'ov:Metadata': 'ov:SourceLocation!',
  'ov:ExtensionPoint PrimaryCommandSurface': 'ov:OfficeTab* ov:CustomTab*',
  'ov:OfficeTab': 'ov:Group+',
  'ov:CustomTab': 'ov:Group+ ov:Label!',
  'ov:Group': 'ov:Label! ov:Icon! ov:Control+',
  'ov:Control Button': 'ov:Label! ov:Supertip! ov:Icon! ov:Action!',
  'ov:Supertip': 'ov:Title! ov:Description!',
  'ov:Icon': 'bt:Image+',
  'ov:Action ShowTaskpane': 'ov:TaskpaneId ov:SourceLocation! ov:Title',
  'ov:Action ExecuteFunction': 'ov:FunctionName!',
  'ov:Resources': 'bt:Images! bt:Urls! bt:ShortStrings! bt:LongStrings!',
  'bt:Images': 'bt:Image+',
  'bt:Urls': 'bt:Url+',
  'bt:ShortStrings': 'bt:String+',
  'bt:LongStrings': 'bt:String+',
};

/** Elements of which there are several kinds, told apart by their xsi:type. */
const TYPED: ReadonlySet<string> = new Set(['ov:ExtensionPoint', 'ov:Control', 'ov:Action']);

/** An element's name with the prefix of its namespace as it is used here, and its type where it has one. */
function nameOf(node: XmlNode): string {
  return `${PREFIXES.get(node.namespace) ?? `{${node.namespace}}`}${node.name}`;
}

function kindOf(node: XmlNode): string {
  const name = nameOf(node);
  return TYPED.has(name) ? `${name} ${node.attributes.get('xsi:type') ?? 'without xsi:type'}` : name;
}

/** What stands where it may not in an element and all within it, and what is missing. */
export function orderFaults(node: XmlNode): string[] {
  const kind = kindOf(node);
  if (TYPED.has(nameOf(node)) && INSIDE[kind] === undefined) {
    return [`line ${node.line}: ${kind} is not a kind that is known here`];
  }
  const slots = (INSIDE[kind] ?? '').split(' ').filter((slot) => slot !== '');
  const faults: string[] = [];
  let next = 0;
  const seen = new Set<string>();
  for (const child of node.children) {
    const name = nameOf(child);
    const place = slots.findIndex((slot) => slot.replace(/[!+*]$/, '') === name);
    if (place < 0) faults.push(`line ${child.line}: ${name} may not stand in ${kind}`);
    else if (place < next) faults.push(`line ${child.line}: ${name} stands too late in ${kind}`);
    else if (seen.has(name) && !/[+*]$/.test(slots[place] ?? '')) {
      faults.push(`line ${child.line}: ${kind} has a second ${name}`);
    }
    seen.add(name);
    next = Math.max(next, place);
  }
  for (const slot of slots) {
    const name = slot.replace(/[!+*]$/, '');
    if (/[!+]$/.test(slot) && !seen.has(name)) faults.push(`line ${node.line}: ${kind} lacks ${name}`);
  }
  return [...faults, ...node.children.flatMap(orderFaults)];
}
