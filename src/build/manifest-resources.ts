import { allWithin, type XmlNode } from './xml-tree.ts';

/** Which list of resources an element's resid leads to. */
const LIST_OF: Readonly<Record<string, string>> = {
  Image: 'Images',
  SourceLocation: 'Urls',
  FunctionFile: 'Urls',
  Runtime: 'Urls',
  LearnMoreUrl: 'Urls',
  Title: 'ShortStrings',
  Label: 'ShortStrings',
  Namespace: 'ShortStrings',
  Description: 'LongStrings',
};

/** The most characters that identifiers and texts may have, by the lists of resources. */
const MOST_IN_ID = 32;
const MOST_IN_TEXT: Readonly<Record<string, number>> = {
  Images: 2048,
  Urls: 2048,
  ShortStrings: 125,
  LongStrings: 250,
};
/** The same of elements with a text of their own. */
const MOST_IN_ELEMENT: Readonly<Record<string, number>> = {
  DisplayName: 125,
  Description: 250,
  ProviderName: 125,
  TaskpaneId: 125,
  FunctionName: 250,
};

/** One of the resources, with the list that it stands in. */
export interface Resource {
  readonly list: string;
  readonly node: XmlNode;
  readonly value: string;
}

/** The resources of a manifest by their ids; of several with one id, the first. */
export function resourcesOf(root: XmlNode): ReadonlyMap<string, Resource> {
  const resources = new Map<string, Resource>();
  for (const list of listsOf(root)) {
    for (const node of list.children) {
      const id = node.attributes.get('id') ?? '';
      const value = node.attributes.get('DefaultValue') ?? '';
      if (!resources.has(id)) resources.set(id, { list: list.name, node, value });
    }
  }
  return resources;
}

function listsOf(root: XmlNode): readonly XmlNode[] {
  return allWithin(root).find(({ name }) => name === 'Resources')?.children ?? [];
}

/** References that lead nowhere or to another list, resources that nothing refers to, and ids that two share. */
export function referenceFaults(root: XmlNode): string[] {
  const resources = resourcesOf(root);
  const faults: string[] = [];
  const used = new Set<string>();
  for (const { name, attributes, line } of allWithin(root)) {
    const resid = attributes.get('resid');
    if (resid === undefined) continue;
    used.add(resid);
    const list = resources.get(resid)?.list;
    if (list === undefined) faults.push(`line ${line}: no resource has the id ${resid}, which ${name} names`);
    else if (list !== LIST_OF[name]) {
      faults.push(`line ${line}: ${name} names ${resid} of ${list}, where one of ${LIST_OF[name]} is right`);
    }
  }
  for (const [id, { node }] of resources) {
    if (!used.has(id)) faults.push(`line ${node.line}: nothing refers to the resource ${id}`);
  }
  return [...faults, ...duplicates(listsOf(root).flatMap(({ children }) => children)), ...buttonIds(root)];
}

function buttonIds(root: XmlNode): string[] {
  return duplicates(allWithin(root).filter(({ name }) => ['Group', 'Control', 'CustomTab'].includes(name)));
}

function duplicates(nodes: readonly XmlNode[]): string[] {
  const seen = new Set<string>();
  return nodes.flatMap(({ attributes, line, name }) => {
    const id = attributes.get('id');
    if (id === undefined || id === '') return [`line ${line}: ${name} has no id`];
    if (seen.has(id)) return [`line ${line}: a second ${name} has the id ${id}`];
    seen.add(id);
    return [];
  });
}

/** Ids and texts that are empty, or longer than they may be. */
export function lengthFaults(root: XmlNode): string[] {
  const faults: string[] = [];
  const judge = (line: number, what: string, text: string, most: number): void => {
    if (text.length === 0) faults.push(`line ${line}: ${what} is empty`);
    if (text.length > most)
      faults.push(`line ${line}: ${what} has ${text.length} characters of at most ${most}`);
  };
  for (const node of allWithin(root)) {
    const { name, line, attributes } = node;
    const resid = attributes.get('resid');
    if (resid !== undefined) judge(line, `the resid of ${name}`, resid, MOST_IN_ID);
    const most = MOST_IN_ELEMENT[name];
    if (most !== undefined && resid === undefined) {
      judge(line, name, attributes.get('DefaultValue') ?? node.text, most);
    }
  }
  for (const list of listsOf(root)) {
    for (const { attributes, line } of list.children) {
      const id = attributes.get('id') ?? '';
      judge(line, `the id ${id}`, id, MOST_IN_ID);
      judge(line, id, attributes.get('DefaultValue') ?? '', MOST_IN_TEXT[list.name] ?? 0);
    }
  }
  return faults;
}
