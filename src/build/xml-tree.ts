import { SaxesParser } from 'saxes';

/** An element that was read, with where it begins. */
export interface XmlNode {
  /** The address of its namespace. */
  readonly namespace: string;
  readonly name: string;
  /** By name, prefix included. */
  readonly attributes: ReadonlyMap<string, string>;
  readonly children: readonly XmlNode[];
  /** The text straight inside it, trimmed. */
  readonly text: string;
  readonly line: number;
}

interface GrowingNode extends XmlNode {
  readonly children: GrowingNode[];
  text: string;
}

/**
 * Reads an XML text into its elements.
 * @throws where it is not well-formed
 */
export function readXml(text: string): XmlNode {
  const parser = new SaxesParser({ xmlns: true });
  const open: GrowingNode[] = [];
  let root: GrowingNode | undefined;
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) => {
    const node: GrowingNode = {
      namespace: tag.uri,
      name: tag.local,
      attributes: new Map(Object.values(tag.attributes).map(({ name, value }) => [name, value])),
      children: [],
      text: '',
      line: parser.line,
    };
    open.at(-1)?.children.push(node);
    root ??= node;
    open.push(node);
  });
  parser.on('text', (piece) => {
    const node = open.at(-1);
    if (node !== undefined) node.text = `${node.text}${piece}`.trim();
  });
  parser.on('closetag', () => {
    open.pop();
  });
  parser.write(text).close();
  if (root === undefined) throw new Error('there is no element in it');
  return root;
}

/** An element and all within it, in the order of the text. */
export function allWithin(node: XmlNode): XmlNode[] {
  return [node, ...node.children.flatMap(allWithin)];
}
