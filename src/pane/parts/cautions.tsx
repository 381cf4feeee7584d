import { statementsIn } from '../../core/hazard-statements.ts';
import { READ_THE_SHEET, sentenceWords } from '../../core/hazard-wording.ts';
import type { NamedHazard } from './hazard-words.ts';
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
            <CodesInFull text={says} />
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

/** What the codes in a text say, in a few lines: their meaning in full stands with the material. */
function CodesInFull({ text }: { readonly text: string }) {
  const statements = statementsIn(text);
  if (statements.length === 0) return null;
  const sentences = statements.map((statement) => `${statement.code} ${sentenceWords(statement)}`);
  return <span class="dangers-label">{sentences.join('; ')}</span>;
}
