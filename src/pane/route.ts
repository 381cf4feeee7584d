import { type ReadonlySignal, signal } from '@preact/signals';
import type { Exact } from '../core/exact-number.ts';
import { nameOf } from '../core/records.ts';
import type { Lot, Material } from '../core/studio.ts';
import type { Unit } from '../core/unit.ts';
import type { Chosen } from '../session/session-state.ts';

/** The sections of the pane, in the order of their tabs. */
export const SECTIONS = [
  { name: 'today', label: 'Today' },
  { name: 'log', label: 'Log' },
  { name: 'stock', label: 'Stock' },
  { name: 'make', label: 'Make' },
  { name: 'quote', label: 'Quote' },
  { name: 'buy', label: 'Buy' },
] as const;

export type SectionName = (typeof SECTIONS)[number]['name'];

/** A lot by its name and where it stood: a name alone may be another row's too. */
export interface LotName {
  readonly name: string;
  readonly table: string;
  readonly sheetRow: number;
}

/** What is open in Stock. Things are held by name, as every reading of the workbook makes them anew. */
export type StockPage =
  | { readonly kind: 'list' }
  | { readonly kind: 'material'; readonly material: string }
  | { readonly kind: 'lot'; readonly lot: LotName }
  /** What is left of each material at the end of a day, and what it is worth. */
  | { readonly kind: 'closing' }
  /** What was thrown away in a year. */
  | { readonly kind: 'disposals' }
  /** Carrying the workbook over to a new one. */
  | { readonly kind: 'carry' }
  /** A stocktake. */
  | { readonly kind: 'count' };

/** What a new log entry starts with; null where the person fills it in. */
export interface LogPreset {
  readonly job: string | null;
  readonly item: string | null;
  readonly treatment: string | null;
  readonly extent: Exact | null;
}

/** What is to be made; null where the person fills it in. */
export interface MakePreset {
  readonly recipe: string;
  readonly amount: Exact | null;
  readonly unit: Unit | null;
}

const section = signal<SectionName>('today');
const stockPage = signal<StockPage>({ kind: 'list' });
const stockOrigin = signal<string | null>(null);
const logPreset = signal<LogPreset | null>(null);
const makePreset = signal<MakePreset | null>(null);
const quoteJob = signal<string | null>(null);
const arrivals = signal(0);

/** The section that is shown. */
export const openedSection: ReadonlySignal<SectionName> = section;
/** What is open in Stock. */
export const openedStock: ReadonlySignal<StockPage> = stockPage;
/** The material that was open before the list came back: the focus returns to it; null where none was. */
export const leftMaterial: ReadonlySignal<string | null> = stockOrigin;
/** Changes whenever something else than the tabs opened a section: the focus follows there. */
export const arrivalCount: ReadonlySignal<number> = arrivals;
/** The job that Quote shows; null where none has been chosen yet. Quote sets it too. */
export const openedQuoteJob = quoteJob;
/** With what the log is to start; Log takes it over and sets it to null. */
export const waitingPreset = logPreset;
/** What Make is to start with; Make takes it over and sets it to null. */
export const waitingMake = makePreset;

/** Shows a section without moving the focus: its tab was chosen. */
export function showSection(name: SectionName): void {
  section.value = name;
}

/** Opens a section and moves the focus there. */
export function openSection(name: SectionName): void {
  section.value = name;
  arrivals.value += 1;
}

/** Opens the list of the stock, or one thing of it. */
export function openStock(page: StockPage): void {
  const before = stockPage.value;
  stockOrigin.value = before.kind === 'material' ? before.material : null;
  stockPage.value = page;
  openSection('stock');
}

/** Opens a material's figures and lots. */
export function openMaterial(material: Material): void {
  openStock({ kind: 'material', material: material.name });
}

/** Opens a lot's movements. */
export function openLot(lot: Lot): void {
  openStock({ kind: 'lot', lot: lotName(lot) });
}

/** By what a lot is found again after the next reading. */
export function lotName(lot: Lot): LotName {
  const { table, sheetRow } = lot.record.place;
  return { name: lot.name, table, sheetRow };
}

/** Opens Log with a draft that starts from a preset. */
export function openLog(preset: LogPreset): void {
  logPreset.value = preset;
  openSection('log');
}

/** Opens Make with a recipe. */
export function openMake(preset: MakePreset): void {
  makePreset.value = preset;
  openSection('make');
}

/** Opens Quote with a job. */
export function openQuote(job: string): void {
  quoteJob.value = job;
  openSection('quote');
}

/** Opens Log with what the person has chosen in the sheet, as far as it says something; a plan row says all. */
export function logFrom(chosen: Chosen | null): void {
  const preset = presetFrom(chosen);
  if (preset === null) openSection('log');
  else openLog(preset);
}

/** What a new entry starts with for what is chosen; null where that has no job. */
export function presetFrom(chosen: Chosen | null): LogPreset | null {
  switch (chosen?.kind) {
    case 'job':
      return { job: nameOf(chosen.job.job, chosen.job), item: null, treatment: null, extent: null };
    case 'plan': {
      const { job, item, extent } = chosen.plan.record;
      return { job, item, treatment: chosen.plan.treatment.name, extent };
    }
    case 'entry': {
      const { job, item } = chosen.entry.record;
      return { job, item, treatment: null, extent: null };
    }
    default:
      return null;
  }
}
