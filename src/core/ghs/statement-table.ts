import { COMBINED_HAZARDS } from './combined-hazards.ts';
import { ENVIRONMENTAL_HAZARDS } from './environmental-hazards.ts';
import { EUROPEAN_SUPPLEMENTS } from './european-supplements.ts';
import { HEALTH_HAZARDS } from './health-hazards.ts';
import { PHYSICAL_HAZARDS } from './physical-hazards.ts';
import type { PictogramCode } from './pictograms.ts';
import { PREVENTION } from './prevention.ts';
import { RESPONSE } from './response.ts';
import { STORAGE_AND_DISPOSAL } from './storage-and-disposal.ts';

export type SignalWord = 'Danger' | 'Warning';

/** What one hazard category makes of a statement. */
export interface StatementCategory {
  readonly signal: SignalWord | null;
  readonly pictograms: readonly PictogramCode[];
}

/** A statement of the published table. */
export interface PublishedStatement {
  /** As it is published, parts joined by +. */
  readonly code: string;
  /** Word for word; begins with (Deleted) where the table marks it so. */
  readonly sentence: string;
  /** Those that differ, in the table's order; more than one where the category decides. */
  readonly categories: readonly StatementCategory[];
  /** The codes of the statements about protective equipment that the table gives beside it. */
  readonly protection: readonly string[];
}

const SIGNALS: Readonly<Record<string, SignalWord>> = { D: 'Danger', W: 'Warning' };

/**
 * A line: code | categories | protection | sentence. A category is the initial of its signal word and the last digits
 * of its pictograms (D12: Danger, GHS01 and GHS02); protection is the digits of P codes (280,283).
 */
function readLine(line: string): PublishedStatement {
  const [code = '', categories = '', protection = '', sentence = ''] = line.split('|');
  return {
    code,
    sentence,
    categories: categories.split('/').map(readCategory),
    protection: protection === '' ? [] : protection.split(',').map((digits) => `P${digits}`),
  };
}

function readCategory(text: string): StatementCategory {
  return {
    signal: SIGNALS[text.charAt(0)] ?? null,
    pictograms: Array.from(text.replace(/\D/g, ''), (digit) => `GHS0${digit}` as PictogramCode),
  };
}

/** All statements, hazards first. */
export const PUBLISHED_STATEMENTS: readonly PublishedStatement[] = [
  PHYSICAL_HAZARDS,
  HEALTH_HAZARDS,
  ENVIRONMENTAL_HAZARDS,
  COMBINED_HAZARDS,
  EUROPEAN_SUPPLEMENTS,
  PREVENTION,
  RESPONSE,
  STORAGE_AND_DISPOSAL,
].flatMap((lines) => lines.trim().split('\n').map(readLine));
