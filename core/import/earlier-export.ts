import { NO_LOT } from '../material/lot.ts';
import { NO_EXTRA_BLANKS } from '../part/extra-blanks.ts';

type Fields = Readonly<Record<string, unknown>>;

/** What rows got since exports were first written, by kind: what each such row is without it. */
const LATER_FIELDS: Readonly<Record<string, Fields>> = {
  line: { due: null, release: null, importance: null, note: '', ...NO_LOT, mixLots: false },
  sheet: NO_LOT,
  settings: {
    decimals: 'point',
    setUpDone: [],
    remnants: null,
    extraBlanks: NO_EXTRA_BLANKS,
    stockKnows: null,
    awaitMetal: true,
  },
  part: { extraBlanks: null, steps: [] },
  machine: { betweenFramesMm: null, timesEdition: 1 },
};
/** Kinds that came since then. */
const LATER_KINDS: Fields = {
  otherName: [],
  fileLayout: [],
  tool: [],
  keptList: [],
  delivery: [],
  cutCount: [],
};

/**
 * An export of an earlier version as this one writes it. What is there stays as it is, so that a wrong row is still found
 * by its schema.
 * @param raw what the file says, whatever it is
 */
export function upToDate(raw: unknown): unknown {
  if (!isFields(raw) || !isFields(raw.tables)) return raw;
  const { step, fact, ...rows } = { ...LATER_KINDS, ...raw.tables } as Fields;
  const tables = {
    ...Object.fromEntries(Object.entries(rows).map(([kind, list]) => [kind, each(list, filled(kind))])),
    ...(step === undefined ? {} : { step: each(step, withChanges) }),
    ...(fact === undefined ? {} : { fact: each(fact, withChanges) }),
  };
  return { ...raw, tables };
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const each = (list: unknown, make: (row: unknown) => unknown): unknown =>
  Array.isArray(list) ? list.map(make) : list;

const filled = (kind: unknown) => (row: unknown) => {
  const later = typeof kind === 'string' && Object.hasOwn(LATER_FIELDS, kind) ? LATER_FIELDS[kind] : null;
  return later && isFields(row) ? { ...later, ...row } : row;
};

/** An entry of a history, whose changes keep whole rows. */
const withChanges = (entry: unknown): unknown =>
  isFields(entry)
    ? {
        ...entry,
        changes: each(entry.changes, (one) => {
          if (!isFields(one)) return one;
          const fill = filled(one.kind);
          return { ...one, before: fill(one.before), after: fill(one.after) };
        }),
      }
    : entry;
