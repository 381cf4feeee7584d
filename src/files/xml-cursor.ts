import { damaged } from './file-refused.ts';
import { decodeXml } from './xml-text.ts';

const OPEN = 0;
const CLOSE = 1;
const EMPTY = 2;

const TAB_TO_SPACE = 32;
const DOUBLE_QUOTE = 34;
const SINGLE_QUOTE = 39;
const SLASH = 47;
const COLON = 58;
const LESS = 60;
const EQUALS = 61;
const GREATER = 62;

/**
 * Goes through the tags of an XML text, one `next()` at a time, and tells where each stands: what isn't
 * looked at stays as it is. Checks on the way that tags are well formed and nested. Names are compared without
 * their namespace prefix. Entities are resolved only in what is asked for; a DOCTYPE is refused.
 */
export class XmlCursor {
  readonly text: string;
  /** The tag's place in the text: from `<` to behind `>`. */
  start = 0;
  end: number;
  /** Where the name without prefix begins and ends. */
  nameStart = 0;
  nameEnd = 0;
  /** How many attributes it has; their places follow each other: name start, name end, value start, value end. */
  attributeCount = 0;
  readonly attributePlaces: number[] = [];

  #kind = OPEN;
  readonly #part: string;
  readonly #limit: number;
  /** Start and end of the names of the open elements, prefix included. */
  readonly #open: number[] = [];
  #roots = 0;
  readonly #fragment: boolean;

  /** @param range only this part of the text, in which elements may stay open */
  constructor(text: string, part: string, range?: readonly [number, number]) {
    this.text = text;
    this.#part = part;
    this.end = range?.[0] ?? 0;
    this.#limit = range?.[1] ?? text.length;
    this.#fragment = range !== undefined;
  }

  /** How many elements are open around the next position. */
  get depth(): number {
    return this.#open.length / 2;
  }

  /** Moves to the next tag; false at the end. */
  next(): boolean {
    const { text } = this;
    let at = this.end;
    for (;;) {
      at = text.indexOf('<', at);
      if (at < 0 || at >= this.#limit) return this.#finish();
      const sign = text.charCodeAt(at + 1);
      if (sign === SLASH) {
        this.#readClose(at);
        return true;
      }
      if (sign === 33 || sign === 63) at = this.#skip(at);
      else {
        this.#readOpen(at);
        return true;
      }
    }
  }

  /** Whether the tag begins an element with content. */
  get isOpening(): boolean {
    return this.#kind === OPEN;
  }

  /** Whether the tag ends an element. */
  get isClosing(): boolean {
    return this.#kind === CLOSE;
  }

  /** Whether the tag is a whole element without content. */
  get isEmpty(): boolean {
    return this.#kind === EMPTY;
  }

  /** The local name of the tag. */
  get name(): string {
    return this.text.slice(this.nameStart, this.nameEnd);
  }

  /** Whether the tag has this local name. */
  is(name: string): boolean {
    return this.nameEnd - this.nameStart === name.length && this.text.startsWith(name, this.nameStart);
  }

  /** Whether the tag begins an element (with content or empty) of this local name. */
  begins(name: string): boolean {
    return this.#kind !== CLOSE && this.is(name);
  }

  /** Whether the tag ends an element of this local name. */
  closes(name: string): boolean {
    return this.#kind === CLOSE && this.is(name);
  }

  /** The value of an attribute, by its whole name, or undefined. */
  attribute(name: string): string | undefined {
    const { text, attributePlaces: places } = this;
    for (let index = 0; index < this.attributeCount * 4; index += 4) {
      const start = places[index] as number;
      if ((places[index + 1] as number) - start === name.length && text.startsWith(name, start)) {
        return decodeXml(text.slice(places[index + 2], places[index + 3]));
      }
    }
    return undefined;
  }

  /** The value of the attribute of this local name that has a prefix (such as `r:id`), or undefined. */
  prefixedAttribute(localName: string): string | undefined {
    const { text, attributePlaces: places } = this;
    for (let index = 0; index < this.attributeCount * 4; index += 4) {
      if (text.slice(places[index], places[index + 1]).endsWith(`:${localName}`)) {
        return decodeXml(text.slice(places[index + 2], places[index + 3]));
      }
    }
    return undefined;
  }

  /** The tag as it is written. */
  get tag(): string {
    return this.text.slice(this.start, this.end);
  }

  /**
   * Moves to the end of the element that has just been opened.
   * @returns where its content ends (its closing tag begins)
   */
  skipElement(): number {
    if (this.#kind !== OPEN) return this.end;
    const depth = this.depth;
    while (this.next()) {
      if (this.depth < depth) return this.start;
    }
    throw this.#malformed('an element is not closed');
  }

  /** Moves to the end of the element that has just been opened and gives the text directly in it. */
  readText(): string {
    const from = this.end;
    return decodeXml(this.text.slice(from, this.skipElement()));
  }

  #readOpen(at: number): void {
    const { text } = this;
    let i = at + 1;
    this.nameStart = i;
    let sign = text.charCodeAt(i);
    while (sign > TAB_TO_SPACE && sign !== GREATER && sign !== SLASH) {
      if (sign === COLON) this.nameStart = i + 1;
      if (sign === LESS || sign === EQUALS || sign === DOUBLE_QUOTE) throw this.#malformed('a tag is broken');
      sign = text.charCodeAt(++i);
    }
    if (i === this.nameStart) throw this.#malformed('a tag has no name');
    this.nameEnd = i;
    this.start = at;
    const qualifiedEnd = i;
    i = this.#readAttributes(i);
    const empty = text.charCodeAt(i) === SLASH;
    if (empty) i++;
    if (text.charCodeAt(i) !== GREATER) throw this.#malformed('a tag is broken');
    this.end = i + 1;
    this.#kind = empty ? EMPTY : OPEN;
    if (this.#open.length === 0) this.#roots++;
    if (!empty) this.#open.push(at + 1, qualifiedEnd);
  }

  #readAttributes(from: number): number {
    const { text, attributePlaces: places } = this;
    let count = 0;
    let i = from;
    for (;;) {
      const before = i;
      while (text.charCodeAt(i) <= TAB_TO_SPACE) i++;
      let sign = text.charCodeAt(i);
      if (sign === GREATER || sign === SLASH) break;
      if (i === before) throw this.#malformed('a tag is broken');
      places[count] = i;
      while (sign > TAB_TO_SPACE && sign !== EQUALS && sign !== GREATER && sign !== LESS) {
        sign = text.charCodeAt(++i);
      }
      places[count + 1] = i;
      while (text.charCodeAt(i) <= TAB_TO_SPACE) i++;
      if (text.charCodeAt(i) !== EQUALS) throw this.#malformed('an attribute has no value');
      i++;
      while (text.charCodeAt(i) <= TAB_TO_SPACE) i++;
      const quote = text.charCodeAt(i);
      if (quote !== DOUBLE_QUOTE && quote !== SINGLE_QUOTE)
        throw this.#malformed('an attribute has no value');
      places[count + 2] = ++i;
      sign = text.charCodeAt(i);
      while (sign !== quote) {
        if (sign === LESS || Number.isNaN(sign)) throw this.#malformed('an attribute is not closed');
        sign = text.charCodeAt(++i);
      }
      places[count + 3] = i++;
      count += 4;
    }
    this.attributeCount = count / 4;
    return i;
  }

  #readClose(at: number): void {
    const { text } = this;
    const open = this.#open;
    const nameEnd = open.pop();
    const nameStart = open.pop();
    if (nameEnd === undefined || nameStart === undefined) throw this.#malformed('an end tag stands alone');
    const length = nameEnd - nameStart;
    let local = at + 2;
    for (let k = 0; k < length; k++) {
      const sign = text.charCodeAt(at + 2 + k);
      if (sign !== text.charCodeAt(nameStart + k)) throw this.#malformed('tags are not nested');
      if (sign === COLON) local = at + 3 + k;
    }
    let i = at + 2 + length;
    this.nameStart = local;
    this.nameEnd = i;
    while (text.charCodeAt(i) <= TAB_TO_SPACE) i++;
    if (text.charCodeAt(i) !== GREATER) throw this.#malformed('tags are not nested');
    this.attributeCount = 0;
    this.#kind = CLOSE;
    this.start = at;
    this.end = i + 1;
  }

  /** Steps over a comment, CDATA section or processing instruction. */
  #skip(at: number): number {
    const { text } = this;
    let closing = '?>';
    if (text.startsWith('<!--', at)) closing = '-->';
    else if (text.startsWith('<![CDATA[', at)) closing = ']]>';
    else if (!text.startsWith('<?', at))
      throw this.#malformed('it has a DOCTYPE, which workbooks never have');
    const end = text.indexOf(closing, at + 2);
    if (end < 0) throw this.#malformed('it breaks off');
    return end + closing.length;
  }

  #finish(): false {
    if (this.#fragment) return false;
    if (this.#open.length > 0) throw this.#malformed('it breaks off');
    if (this.#roots !== 1) throw this.#malformed('it is no XML document');
    return false;
  }

  #malformed(detail: string): Error {
    return damaged(`${this.#part} can't be read: ${detail}`);
  }
}
