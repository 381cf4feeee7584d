import { SaxesParser } from 'saxes';
import { unpack } from './fixture.ts';

/** Parses a text with an independent parser; throws where it isn't well formed. */
export function parseStrictly(
  text: string,
  visit?: (name: string, attributes: Record<string, string>) => void,
): void {
  const parser = new SaxesParser({ xmlns: false });
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', (tag) =>
    visit?.(tag.name.replace(/^.*:/, ''), tag.attributes as Record<string, string>),
  );
  parser.write(text).close();
}

/** Checks every XML part of a file: well formed, and in sheets rows and cells strictly ascending. */
export function checkFile(bytes: Uint8Array): void {
  for (const [name, text] of Object.entries(unpack(bytes))) {
    if (!/\.(?:xml|rels)$/.test(name)) continue;
    let row = 0;
    let column = 0;
    parseStrictly(text, (element, attributes) => {
      if (!name.includes('worksheets/sheet')) return;
      if (element === 'row') {
        const number = Number(attributes['r'] ?? row + 1);
        if (number <= row) throw new Error(`${name}: row ${number} after ${row}`);
        row = number;
        column = 0;
      } else if (element === 'c') {
        const place = /^([A-Z]+)(\d+)$/.exec(attributes['r'] ?? '');
        const number = place
          ? [...(place[1] ?? '')].reduce((n, c) => n * 26 + c.charCodeAt(0) - 64, 0)
          : column + 1;
        if (number <= column || (place && Number(place[2]) !== row)) {
          throw new Error(`${name}: cell ${attributes['r']} after column ${column} in row ${row}`);
        }
        column = number;
      }
    });
  }
}
