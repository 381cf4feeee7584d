import type { ComponentChildren } from 'preact';

/** A name and what it is. */
export type Fact = readonly [name: string, value: ComponentChildren];

/** Names and values, one below the other. */
export function Facts({ facts }: { readonly facts: readonly Fact[] }) {
  return (
    <dl class="facts">
      {facts.map(([name, value]) => (
        <div key={name} class="fact">
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
