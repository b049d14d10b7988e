import { rowName } from '../edit/row-name.ts';
import type { Conflict } from '../result.ts';
import { rowKinds, type RowKind, type Shop } from '../shop/state.ts';
import { formatDayAndClock } from '../time/wall.ts';
import { formatLength } from '../units/length.ts';
import { writeNumber } from '../units/number.ts';

/** Two versions of a row, field by field where they differ. */
export interface ConflictWords {
  /** "line 1042/1" */
  readonly what: string;
  /** What became of the row meanwhile, where it is not a change: it was removed, or is to go. */
  readonly note: string | null;
  readonly fields: readonly { readonly name: string; readonly mine: string; readonly theirs: string }[];
}

type Fields = Readonly<Record<string, unknown>>;
/** Of no interest to a person. */
const HIDDEN: readonly string[] = ['id', 'revision', 'orderId', 'number', 'closedAt'];
const NAMES: Readonly<Record<string, string>> = {
  quantity: 'pieces',
  overrun: 'extra pieces accepted',
  release: 'not before',
  partId: 'part',
  materialId: 'material',
  colourId: 'colour',
  calendarId: 'calendar',
  lengthMm: 'length',
};
const INSTANTS: readonly string[] = ['due', 'release', 'from', 'to'];

/** A conflict as a screen shows it. */
export function conflictWords(shop: Shop, { kind, id, mine, theirs }: Conflict): ConflictWords {
  const what = kind in rowKinds ? rowName(kind as RowKind, id) : `${kind} ${id}`;
  if (mine === null || theirs === null) {
    const note =
      theirs === null ? 'It was removed meanwhile.' : 'It was changed meanwhile; you are removing it.';
    return { what, note, fields: [] };
  }
  const [a, b] = [mine as Fields, theirs as Fields];
  const keys = Object.keys(b).filter(
    (key) => !HIDDEN.includes(key) && JSON.stringify(a[key]) !== JSON.stringify(b[key]),
  );
  return {
    what,
    note: keys.length === 0 ? 'Both versions say the same.' : null,
    fields: keys.map((key) => ({
      name: NAMES[key] ?? key.replace(/(Mm|Id|Cents)$/, '').replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`),
      mine: ofOrder(kind, key, a[key]) ?? valueWords(shop, key, a[key]),
      theirs: ofOrder(kind, key, b[key]) ?? valueWords(shop, key, b[key]),
    })),
  };
}

/** A line that says nothing of its own has its order's terms. */
const ofOrder = (kind: string, key: string, value: unknown): string | null =>
  kind === 'line' && value === null && ['due', 'release', 'importance'].includes(key)
    ? 'as the work order'
    : null;

function valueWords({ settings }: Shop, key: string, value: unknown): string {
  if (value === null || value === undefined || value === '') return 'none';
  if (typeof value === 'object') return 'a list of its own';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'string') return value;
  if (typeof value !== 'number' || !Number.isFinite(value)) return 'none';
  if (INSTANTS.includes(key)) return formatDayAndClock(value, settings.timeZone);
  return key.endsWith('Mm') ? formatLength(value, settings) : writeNumber(value, settings.decimals);
}
