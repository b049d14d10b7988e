import { stillUsual, usualMachine, USUAL_MACHINE_BASIS } from '../estimate/usual-machine.ts';
import { name } from '../fields.ts';
import { quoted } from '../quoted.ts';
import type { Machine } from '../shop/machine.ts';
import { aStage, type Stage } from '../part/stage.ts';
import type { Shop } from '../shop/state.ts';
import { formatLength, formatThickness } from '../units/length.ts';
import type { FileFields } from './field.ts';
import type { ImportKind, RowIssue } from './kind.ts';
import { LIST_WORDS } from './list-words.ts';
import {
  Codes,
  judgeList,
  numberIn,
  otherNames,
  textIn,
  type Becomes,
  type ListOf,
  type OfRow,
} from './list-rows.ts';
import { namesOf } from './names.ts';
import type { ReadRow } from './read-rows.ts';
import { writeNumber } from '../units/number.ts';

/** Words for each in English, German, French and Spanish; common practice, no source. */
const STAGES = {
  shear: ['guillotine', 'guillotine shear', 'schere', 'tafelschere', 'cisaille', 'cizalla', 'guillotina'],
  brake: [
    'press brake',
    'bending',
    'folding',
    'abkantpresse',
    'biegepresse',
    'kantbank',
    'presse plieuse',
    'plieuse',
    'plegadora',
  ],
  notch: [
    'notching bench',
    'notching',
    'notcher',
    'punch',
    'punching',
    'klinken',
    'stanzen',
    'grugeage',
    'poinconnage',
    'punzonado',
  ],
  end: ['end work bench', 'end work', 'soldering', 'endbearbeitung', 'loten', 'soudure', 'soldadura'],
  outside: [
    'outside shop',
    'outside work',
    'subcontract',
    'fremdarbeit',
    'auswarts',
    'sous traitance',
    'externo',
  ],
  pack: ['packing bench', 'packing', 'packaging', 'verpacken', 'verpackung', 'emballage', 'embalaje'],
} as const satisfies Readonly<Record<Stage, readonly string[]>>;

const fields: FileFields = {
  kind: 'machines',
  key: 'name',
  fields: [
    { name: 'code', sort: { is: 'text', schema: name }, needed: 'no', words: LIST_WORDS.code },
    { name: 'name', sort: { is: 'text', schema: name }, needed: 'row', words: LIST_WORDS.machineName },
    { name: 'stage', sort: { is: 'one-of', words: STAGES }, needed: 'no', words: LIST_WORDS.stage },
    { name: 'length', sort: { is: 'length' }, needed: 'no', words: LIST_WORDS.machineLength },
    { name: 'thickness', sort: { is: 'thickness' }, needed: 'no', words: LIST_WORDS.machineThickness },
    { name: 'tonnes', sort: { is: 'number', min: 0.1, max: 5000 }, needed: 'no', words: LIST_WORDS.tonnes },
    { name: 'die opening', sort: { is: 'length' }, needed: 'no', words: LIST_WORDS.dieOpening },
    { name: 'back gauge', sort: { is: 'length' }, needed: 'no', words: LIST_WORDS.backGauge },
    { name: 'narrowest strip', sort: { is: 'length' }, needed: 'no', words: LIST_WORDS.minStrip },
    { name: 'people', sort: { is: 'whole', min: 1, max: 4 }, needed: 'no', words: LIST_WORDS.people },
    { name: 'calendar', sort: { is: 'text', schema: name }, needed: 'no', words: LIST_WORDS.calendar },
  ],
};

/** The fields of a file by the limits of a machine. */
const LIMITS = {
  maxLengthMm: 'length',
  maxThicknessMm: 'thickness',
  tonnes: 'tonnes',
  dieOpeningMm: 'die opening',
  backGaugeMm: 'back gauge',
  minStripMm: 'narrowest strip',
} as const;

const machines: ListOf<'machine'> = {
  kind: 'machine',
  fieldOf: { id: 'code', name: 'name', stage: 'stage', ...LIMITS, crew: 'people', calendarId: 'calendar' },
  cells: ({ settings, calendar }, row) => {
    const length = (mm: number | null): string => (mm === null ? 'none' : formatLength(mm, settings));
    return {
      name: row.name,
      stage: row.stage,
      length: length(row.maxLengthMm),
      thickness: row.maxThicknessMm === null ? 'none' : formatThickness(row.maxThicknessMm, settings),
      tonnes: row.tonnes === null ? 'none' : writeNumber(row.tonnes, settings.decimals),
      'die opening': length(row.dieOpeningMm),
      'back gauge': length(row.backGaugeMm?.max ?? null),
      'narrowest strip': length(row.minStripMm),
      people: String(row.crew),
      calendar: calendar.find(({ id }) => id === row.calendarId)?.name ?? row.calendarId,
    };
  },
};

/** Files of machines, each known by its code or name; what a file leaves out of a new one is usual, and said. */
export const machineFiles: ImportKind = {
  fields: () => fields,
  judge(rows, context) {
    const { shop } = context;
    const names = namesOf(shop, []);
    const codes = new Codes(shop.machine);
    const issues: RowIssue[] = [];
    const becomes = rows.flatMap((row): Becomes<'machine'>[] => {
      const [own, said] = [textIn(row, 'name') ?? '', textIn(row, 'code')];
      const before = (said && names.find('machine', said)) || names.find('machine', own);
      const refused = wrongOf(shop, row, before);
      issues.push(...refused.map((issue) => ({ ...issue, row: row.row })));
      if (refused.length > 0) return [];
      const id = before?.id ?? (said === undefined ? codes.made(own) : codes.for(said));
      const after = machineOf(shop, row, before, id);
      const words = before ? '' : wordsOf(shop, row, after);
      return [{ row, before, after, words, others: otherNames('machine', said, after) }];
    });
    const hasForce = rows.some(({ values }) => values['tonnes'] !== undefined);
    const notes = hasForce
      ? ['Force is read as metric tonnes: a US ton is a tenth less, 100 kN are 10.2.']
      : [];
    return judgeList(machines, becomes, context, { issues, notes });
  },
};

const AT_NO_BENCH = ['thickness', 'tonnes', 'die opening', 'back gauge', 'narrowest strip'] as const;
/** The limits that only the other kinds of machine have. */
const NOT_OF: Readonly<Record<Stage, readonly (typeof LIMITS)[keyof typeof LIMITS][]>> = {
  shear: ['tonnes', 'die opening'],
  brake: ['narrowest strip'],
  ...{ notch: AT_NO_BENCH, end: AT_NO_BENCH, outside: [...AT_NO_BENCH, 'length'], pack: AT_NO_BENCH },
};

const stageIn = (row: ReadRow, before: Machine | null): Stage | undefined =>
  (textIn(row, 'stage') as Stage | undefined) ?? before?.stage;

function wrongOf(shop: Shop, row: ReadRow, before: Machine | null): OfRow[] {
  const stage = stageIn(row, before);
  if (stage === undefined)
    return [
      {
        field: 'stage',
        reason:
          'Is it a shear or a press brake? Write shear or brake as its stage; notch, end, outside or pack for a bench or an outside shop.',
      },
    ];
  const stray = NOT_OF[stage].flatMap((field): OfRow[] =>
    row.values[field] === undefined
      ? []
      : [{ field, reason: `${aStage(stage)} has no ${field}. Leave the cell empty, or correct the stage.` }],
  );
  if (calendarOf(shop, row, before) !== undefined) return stray;
  const has = quoted(
    shop.calendar.map((calendar) => calendar.name),
    5,
  );
  const reason =
    shop.calendar.length === 0
      ? 'The shop has no working hours yet. Add a calendar in Shop, Calendars, first.'
      : `Which hours does it work? Write one of the shop’s calendars: ${has}.`;
  return [...stray, { field: 'calendar', reason }];
}

/** The calendar that a row names, or the only one of the shop. */
function calendarOf({ calendar }: Shop, row: ReadRow, before: Machine | null): string | undefined {
  const said = textIn(row, 'calendar')?.toLowerCase();
  if (said === undefined) return before?.calendarId ?? (calendar.length === 1 ? calendar[0]?.id : undefined);
  return calendar.find((one) => [one.id, one.name].some((text) => text.toLowerCase() === said))?.id;
}

function machineOf(shop: Shop, row: ReadRow, before: Machine | null, id: string): Machine {
  const stage = stageIn(row, before) ?? 'brake';
  const calendarId = calendarOf(shop, row, before) ?? '';
  const base = before ?? { ...usualMachine(stage, shop.settings.units, calendarId, []), id };
  const reach = numberIn(row, 'back gauge');
  return {
    ...base,
    stage,
    calendarId,
    name: textIn(row, 'name') ?? base.name,
    maxLengthMm: numberIn(row, 'length') ?? base.maxLengthMm,
    maxThicknessMm: numberIn(row, 'thickness') ?? base.maxThicknessMm,
    tonnes: numberIn(row, 'tonnes') ?? base.tonnes,
    dieOpeningMm: numberIn(row, 'die opening') ?? base.dieOpeningMm,
    backGaugeMm:
      base.backGaugeMm && reach !== undefined ? { ...base.backGaugeMm, max: reach } : base.backGaugeMm,
    minStripMm: numberIn(row, 'narrowest strip') ?? base.minStripMm,
    crew: numberIn(row, 'people') ?? base.crew,
  };
}

/** What of a new machine nobody has said. */
function wordsOf({ settings }: Shop, row: ReadRow, after: Machine): string {
  const usual = stillUsual(after, settings.units)
    .map((key) => LIMITS[key])
    .filter((field) => row.values[field] === undefined);
  if (usual.length === 0) return '';
  return `Usual ${usual.join(', ')}: ${USUAL_MACHINE_BASIS}. Correct them by its plate.`;
}
