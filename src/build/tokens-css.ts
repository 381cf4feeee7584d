import { DESIGN_TOKENS } from './design-tokens.ts';

/** A theme's value as the formatter would have it written. */
const cssValue = (value: string): string => value.replaceAll("'", '"').replaceAll(/,(?=\S)/g, ', ');

function declarations(pairs: readonly (readonly [name: string, value: string])[], indent: string): string {
  return pairs.map(([name, value]) => `${indent}--${name}: ${cssValue(value)};`).join('\n');
}

/**
 * The style sheet of the custom properties: light by default, dark where the device or `data-theme="dark"` on an
 * element says so; `data-theme="light"` on the root keeps it light. High contrast is left to forced colours.
 */
export function tokensCss(): string {
  const all = [...DESIGN_TOKENS];
  const light = all.map(([name, value]) => [name, value.light] as const);
  const dark = all
    .filter(([, value]) => value.dark !== value.light)
    .map(([name, value]) => [name, value.dark] as const);
  return `/* Written by \`npm run tokens\` from src/build/design-tokens.ts: change it there. */

:root {
  color-scheme: light;
${declarations(light, '  ')}
}

[data-theme="dark"] {
  color-scheme: dark;
${declarations(dark, '  ')}
}

@media (prefers-color-scheme: dark) {
  :root:not([data-theme="light"]) {
    color-scheme: dark;
${declarations(dark, '    ')}
  }
}
`;
}
