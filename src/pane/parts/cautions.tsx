import { type NamedHazard, READ_THE_SHEET } from './hazard-words.ts';
import { Banner } from './layout.tsx';

/** The hazards that the workbook names, and that what to do about them is said elsewhere. */
export function Cautions({ hazards }: { readonly hazards: readonly NamedHazard[] }) {
  if (hazards.length === 0) return null;
  return (
    <Banner tone="warn" title="Cautions">
      <ul class="plain-list">
        {hazards.map(({ material, says }) => (
          <li key={material}>
            <strong>{material}</strong>: {says}
          </li>
        ))}
      </ul>
      <p>
        {READ_THE_SHEET} What stands here is what the workbook says of the materials; it vouches for no
        treatment.
      </p>
    </Banner>
  );
}
