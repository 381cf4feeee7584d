import type { PlacedNotice } from '../../actions/check-workbook.ts';
import { type Day, spokenDay } from '../../core/day.ts';
import { accountIn, type Ledger } from '../../core/ledger.ts';
import { lifeLimitsOn, openedOn } from '../../core/life.ts';
import { isReversedBy, type LotAccount } from '../../core/lot-account.ts';
import { type Currency, toCoins } from '../../core/money.ts';
import { lotFigures } from '../../core/stock.ts';
import type { Lot } from '../../core/studio.ts';
import { costPerUse, maxUses, USE, usesLeft } from '../../core/uses.ts';
import { spokenNumber, spokenPhLimits, spokenQuantity, unitFor } from '../../core/wording.ts';
import { inCurrency, noticeLines, spokenMoney } from '../check-text.ts';
import { hazardsText } from '../hazards-text.ts';
import { goodWords, namedLot } from '../lot-words.ts';
import { heading, listed, type Terminal } from '../terminal.ts';
import { type TextColumn, textTable } from '../text-table.ts';

const MOVEMENT_COLUMNS: readonly TextColumn[] = [
  { header: 'date', align: 'left' },
  { header: 'kind', align: 'left' },
  { header: 'job', align: 'left' },
  { header: 'item', align: 'left' },
  { header: 'quantity', align: 'right' },
  { header: 'unit', align: 'left' },
  { header: 'left', align: 'right' },
  { header: 'cost', align: 'right' },
  { header: 'note', align: 'left' },
];

/** Everything about one lot as text. */
export function lotText(
  ledger: Ledger,
  lot: Lot,
  notices: readonly PlacedNotice[],
  today: Day,
  terminal: Terminal,
): string[] {
  const { settings } = ledger.studio;
  const account = accountIn(ledger, lot);
  const all = [...whatItIs(lot), ...whatIsLeft(account, settings.currency, today), ...pHOf(lot)];
  const goodUntil = goodWords(ledger, lot, today);
  const others = lifeLimitsOn(account, today).slice(1);
  const movements = movementRows(account, settings.currency, today);
  return [
    heading(`${namedLot(lot)} on ${spokenDay(today)}${inCurrency(settings.currency)}`, terminal),
    ...all.flatMap(([name, text]) => listed(`${name}: ${text}`, terminal)),
    ...listed(`${goodUntil.charAt(0).toUpperCase()}${goodUntil.slice(1)}.`, terminal),
    ...others.flatMap(({ day, reason }) => listed(`Later: ${spokenDay(day)} (${reason}).`, terminal)),
    '',
    ...hazardsText(lot.material, settings, today, terminal),
    '',
    heading('Movements', terminal),
    ...(movements.length === 0
      ? ['None by that day.']
      : textTable(MOVEMENT_COLUMNS, movements, terminal.width)),
    ...(notices.length === 0
      ? []
      : ['', heading('Needs attention', terminal), ...noticeLines(notices, terminal)]),
  ];
}

type Fact = readonly [name: string, text: string];

function facts(given: readonly (readonly [string, string | null])[]): Fact[] {
  return given.flatMap(([name, text]) => (text === null ? [] : [[name, text] as const]));
}

function whatItIs({ record, cold, dark }: Lot): Fact[] {
  const climate = [cold ? 'cold' : null, dark ? 'dark' : null].filter((word) => word !== null).join(', ');
  const place =
    record.storedAt === null || climate === '' ? record.storedAt : `${record.storedAt} (${climate})`;
  return facts([
    ['Table', `${record.place.table}, row ${record.place.sheetRow}`],
    ['Place', place],
    ['Received', `${spokenDay(record.received)}, ${spokenQuantity(record.quantity, record.unit)}`],
    ['Supplier', record.supplier],
    ['Supplier lot', record.supplierLot],
    ['Recipe', record.recipe],
    ['Notes', record.notes],
  ]);
}

function whatIsLeft(account: LotAccount, currency: Currency, today: Day): Fact[] {
  const { lot } = account;
  const { record } = lot;
  const { left, state, worth } = lotFigures(account, today);
  const uses = usesLeft(account, today);
  const all = maxUses(lot);
  const opened = openedOn(account, today);
  const since =
    record.state === state && record.stateSince !== null ? ` since ${spokenDay(record.stateSince)}` : '';
  return facts([
    ['State', `${state}${since}`],
    ['Left', spokenQuantity(left, record.unit)],
    [
      'Uses left',
      uses === null || all === null ? null : `${spokenNumber(uses)} of ${spokenQuantity(all, USE)}`,
    ],
    ['Cost', record.cost === null ? null : spokenMoney(toCoins(record.cost, currency), currency)],
    [
      'Cost per use',
      all === null || record.cost === null ? null : spokenMoney(costPerUse(lot, currency), currency),
    ],
    ['Worth', spokenMoney(worth, currency)],
    ['Opened', opened === null ? null : spokenDay(opened)],
  ]);
}

function pHOf({ record, material }: Lot): Fact[] {
  const { phLow, phHigh } = material.record;
  const limits = spokenPhLimits(phLow, phHigh);
  const should = limits === '' ? '' : `; ${limits} by Materials`;
  return record.ph === null ? [] : [['pH', `${spokenNumber(record.ph)}${should}`]];
}

function movementRows(account: LotAccount, currency: Currency, today: Day): string[][] {
  return account.postings
    .filter(({ movement }) => movement.day <= today)
    .map((posting) => {
      const { movement, left, cost } = posting;
      const quantity = spokenNumber(movement.quantity);
      const isUndone = movement.reverses !== null || isReversedBy(posting, today);
      const note = [
        movement.into === null ? null : `into ${movement.into}`,
        isUndone
          ? movement.reverses === null
            ? 'taken back'
            : `takes back ${movement.reverses.name ?? ''}`
          : null,
        movement.note,
      ].filter((text) => text !== null);
      return [
        spokenDay(movement.date),
        movement.kind,
        movement.job ?? '',
        movement.item ?? '',
        quantity,
        unitFor(quantity, movement.unit),
        spokenQuantity(left, account.lot.record.unit),
        spokenMoney(cost, currency),
        note.join('; '),
      ];
    });
}
