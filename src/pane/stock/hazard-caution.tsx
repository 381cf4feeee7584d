import { type Day, spokenDay } from '../../core/day.ts';
import { READ_THE_SHEET } from '../parts/hazard-words.ts';
import { Banner } from '../parts/layout.tsx';

interface HazardCautionProps {
  /** As they stand in Materials; null where none are given, which doesn't mean that there are none. */
  readonly hazards: string | null;
  readonly checked: Day | null;
}

/** Where a material has hazards: which, as they stand, and where to read what they mean. */
export function HazardCaution({ hazards, checked }: HazardCautionProps) {
  if (hazards === null) return null;
  const when =
    checked === null
      ? 'No day is given on which it was last checked.'
      : `Last checked ${spokenDay(checked)}.`;
  return (
    <Banner tone="warn" title={`Hazards: ${hazards}`}>
      {`${READ_THE_SHEET} ${when}`}
    </Banner>
  );
}
