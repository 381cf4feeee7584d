import { TABLE_NAME } from '../../core/ghs/source.ts';
import type { HazardStatement } from '../../core/hazard-statements.ts';
import { labelWords, pictogramMeanings, sentenceWords } from '../../core/hazard-wording.ts';
import { counted } from '../../core/wording.ts';
import { Disclosure } from './layout.tsx';

/** More than these are folded away. */
const SHOWN = 5;

/** Hazard statements in full: code, sentence, signal word and pictograms by name. */
export function StatementList({ statements }: { readonly statements: readonly HazardStatement[] }) {
  if (statements.length === 0) return null;
  const folded = statements.slice(SHOWN);
  return (
    <>
      <Statements statements={statements.slice(0, SHOWN)} />
      {folded.length > 0 && (
        <Disclosure summary={counted(folded.length, 'more statement')}>
          <Statements statements={folded} />
        </Disclosure>
      )}
    </>
  );
}

function Statements({ statements }: { readonly statements: readonly HazardStatement[] }) {
  return (
    <ul class="plain-list">
      {statements.map((statement) => (
        <li key={statement.code}>
          <strong>{statement.code}</strong> {sentenceWords(statement)}
          {labelWords(statement) !== '' && <span class="dangers-label">{labelWords(statement)}</span>}
        </li>
      ))}
    </ul>
  );
}

/** What the pictograms of some statements mean, and where their sentences come from. */
export function StatementKey({ statements }: { readonly statements: readonly HazardStatement[] }) {
  const meanings = pictogramMeanings(statements);
  if (statements.length === 0) return null;
  return (
    <Disclosure
      summary={meanings.length === 0 ? 'Where the sentences come from' : 'What the pictograms mean'}
    >
      {meanings.length > 0 && (
        <ul class="plain-list">
          {meanings.map((meaning) => (
            <li key={meaning}>{meaning}</li>
          ))}
        </ul>
      )}
      <p>{`${TABLE_NAME}.`}</p>
    </Disclosure>
  );
}
