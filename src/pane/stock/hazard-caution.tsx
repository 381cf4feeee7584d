import { readHazards } from '../../core/hazard-codes.ts';
import { hazardStatements } from '../../core/hazard-statements.ts';
import { READ_THE_SHEET, sheetWords } from '../../core/hazard-wording.ts';
import { sheetLastRead } from '../../core/safety-data-sheet.ts';
import type { Material } from '../../core/studio.ts';
import type { Books } from '../../session/session-state.ts';
import { Banner } from '../parts/layout.tsx';
import { Prose } from '../parts/prose.tsx';
import { StatementKey, StatementList } from '../parts/statement-list.tsx';

interface HazardCautionProps {
  readonly books: Books;
  readonly material: Material;
}

/**
 * What the workbook says of a material's dangers: its hazard codes in full, when its safety data sheet was last read,
 * how to dispose of it. Nothing where nothing of this is given, which doesn't mean that there is no hazard.
 */
export function HazardCaution({ books: { settings, today }, material }: HazardCautionProps) {
  const { hazards, disposal } = material.record;
  if (hazards === null && disposal === null && sheetLastRead(material) === null) return null;
  const statements = hazardStatements(material);
  const words = hazards === null ? [] : readHazards(hazards).words;
  return (
    <Banner
      tone={hazards === null ? 'note' : 'warn'}
      title={hazards === null ? 'No hazards are given' : `Hazards: ${hazards}`}
    >
      <div class="dangers">
        {hazards === null && <p>That doesn’t mean that there are none.</p>}
        <StatementList statements={statements} />
        {/* Without a code the title has said it all. */}
        {statements.length > 0 && words.length > 0 && <p>{`Besides: ${words.join('; ')}`}</p>}
        <StatementKey statements={statements} />
        {disposal !== null && <p>{`Disposal: ${disposal}`}</p>}
        <p>
          <Prose text={sheetWords(material, settings, today)} />
        </p>
        <p>{READ_THE_SHEET}</p>
      </div>
    </Banner>
  );
}
