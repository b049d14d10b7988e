import { name, note } from '../fields.ts';
import { KN_PER_TONNE } from '../part/tonnage.ts';
import type { Tool, ToolKind } from '../part/tool.ts';
import { quoted } from '../quoted.ts';
import type { Shop } from '../shop/state.ts';
import { formatLength, MM_PER_FOOT } from '../units/length.ts';
import type { FileFields } from './field.ts';
import type { ImportKind, RowIssue } from './kind.ts';
import { LIST_WORDS } from './list-words.ts';
import { Codes, judgeList, numberIn, textIn, type Becomes, type ListOf, type OfRow } from './list-rows.ts';
import { namesOf, type Names } from './names.ts';
import type { ReadRow } from './read-rows.ts';
import { WORDS } from './vocabulary.ts';
import { writeNumber } from '../units/number.ts';

/** Words for the three in English, German, French and Spanish; common practice, no source. */
const KINDS = {
  die: [
    'v die',
    'bottom die',
    'bottom tool',
    'matrize',
    'gesenk',
    'unterwerkzeug',
    'matrice',
    've',
    'matriz',
  ],
  punch: ['upper tool', 'top tool', 'stempel', 'oberwerkzeug', 'poincon', 'punzon'],
  hemming: [
    'hemming tools',
    'hemming tool',
    'flattening',
    'umschlagwerkzeug',
    'zudruckwerkzeug',
    'outil a ourler',
    'dobladillo',
  ],
} as const satisfies Readonly<Record<ToolKind, readonly string[]>>;

/** Kilonewtons a metre in one of each unit that a rating is written in; a heading without its unit is no rating. */
const RATINGS = {
  'rating (kN/m)': 1,
  'rating (t/m)': KN_PER_TONNE,
  'rating (t/ft)': KN_PER_TONNE / (MM_PER_FOOT / 1000),
} as const;

const ratingFields = [
  { name: 'rating (kN/m)', words: LIST_WORDS.ratingKnPerM },
  { name: 'rating (t/m)', words: LIST_WORDS.ratingTPerM },
  { name: 'rating (t/ft)', words: LIST_WORDS.ratingTPerFt },
] as const;

const fields: FileFields = {
  kind: 'tools',
  key: 'name',
  fields: [
    { name: 'code', sort: { is: 'text', schema: name }, needed: 'no', words: LIST_WORDS.code },
    { name: 'name', sort: { is: 'text', schema: name }, needed: 'row', words: LIST_WORDS.toolName },
    { name: 'kind', sort: { is: 'one-of', words: KINDS }, needed: 'no', words: LIST_WORDS.toolKind },
    { name: 'v opening', sort: { is: 'length' }, needed: 'no', words: LIST_WORDS.dieOpening },
    { name: 'angle', sort: { is: 'number', min: 20, max: 180 }, needed: 'no', words: LIST_WORDS.toolAngle },
    { name: 'radius', sort: { is: 'length', zero: true }, needed: 'no', words: LIST_WORDS.tipRadius },
    { name: 'gooseneck', sort: { is: 'yes-no' }, needed: 'no', words: LIST_WORDS.gooseneck },
    { name: 'length', sort: { is: 'length' }, needed: 'no', words: LIST_WORDS.toolLength },
    ...ratingFields.map(({ name, words }) => ({
      name,
      sort: { is: 'number' as const, min: 0.1, max: 20_000 },
      needed: 'no' as const,
      words,
    })),
    { name: 'brakes', sort: { is: 'text', schema: note }, needed: 'no', words: LIST_WORDS.brakes },
    { name: 'note', sort: { is: 'text', schema: note }, needed: 'no', words: WORDS.note },
  ],
};

const tools: ListOf<'tool'> = {
  kind: 'tool',
  fieldOf: {
    id: 'code',
    name: 'name',
    kind: 'kind',
    openingMm: 'v opening',
    angleDeg: 'angle',
    radiusMm: 'radius',
    gooseneck: 'gooseneck',
    lengthMm: 'length',
    ratingKnPerM: 'rating (kN/m)',
    machineIds: 'brakes',
    note: 'note',
  },
  cells: ({ settings }, row) => {
    const length = (mm: number | null): string => (mm === null ? 'none' : formatLength(mm, settings));
    const rating = (per: number): string =>
      row.ratingKnPerM === null ? 'none' : writeNumber(row.ratingKnPerM / per, settings.decimals, 1);
    return {
      name: row.name,
      kind: row.kind,
      'v opening': length(row.openingMm),
      angle: String(row.angleDeg ?? 'none'),
      radius: length(row.radiusMm),
      gooseneck: row.gooseneck ? 'yes' : 'no',
      length: length(row.lengthMm),
      ...Object.fromEntries(Object.entries(RATINGS).map(([field, per]) => [field, rating(per)])),
      brakes: row.machineIds.join(', '),
      note: row.note,
    };
  },
};

/** Files of brake tools, each known by its code or name; what a file leaves out of one on record stays. */
export const toolFiles: ImportKind = {
  fields: () => fields,
  judge(rows, context) {
    const { shop } = context;
    const names = namesOf(shop, []);
    const codes = new Codes(shop.tool);
    const find = toolFinder(shop.tool);
    const issues: RowIssue[] = [];
    const becomes = rows.flatMap((row): Becomes<'tool'>[] => {
      const [own, said] = [textIn(row, 'name') ?? '', textIn(row, 'code')];
      const before = find(said) ?? find(own);
      const brakes = brakesIn(shop, names, row, before);
      const refused = [...wrongOf(row, before), ...brakes.wrong];
      issues.push(...refused.map((issue) => ({ ...issue, row: row.row })));
      if (refused.length > 0) return [];
      const id = before?.id ?? (said === undefined ? codes.made(own) : codes.for(said));
      const after = toolOf(row, before, { id, machineIds: brakes.ids });
      const words =
        before || after.ratingKnPerM !== null
          ? ''
          : 'Its rating is not known, so no load on it stops a part.';
      return [{ row, before, after, words, others: [] }];
    });
    return judgeList(tools, becomes, context, { issues });
  },
};

/** By code, then by name, whatever the case. */
function toolFinder(rows: readonly Tool[]) {
  const found = new Map<string, Tool>();
  for (const text of [(row: Tool) => row.id, (row: Tool) => row.name])
    for (const row of rows) if (!found.has(text(row).toLowerCase())) found.set(text(row).toLowerCase(), row);
  return (text: string | undefined): Tool | null => found.get(text?.toLowerCase() ?? '') ?? null;
}

/** What only other kinds of tools have. */
const NOT_OF: Readonly<Record<ToolKind, readonly string[]>> = {
  die: ['radius'],
  punch: ['v opening'],
  hemming: ['v opening', 'angle', 'radius'],
};

const kindIn = (row: ReadRow, before: Tool | null): ToolKind | undefined =>
  (textIn(row, 'kind') as ToolKind | undefined) ?? before?.kind;

function wrongOf(row: ReadRow, before: Tool | null): OfRow[] {
  const kind = kindIn(row, before);
  if (kind === undefined)
    return [
      {
        field: 'kind',
        reason: 'Is it a die, a punch or hemming tools? Write die, punch or hemming as its kind.',
      },
    ];
  const called = kind === 'hemming' ? 'Hemming tools have' : `A ${kind} has`;
  const stray = NOT_OF[kind].flatMap((field): OfRow[] =>
    row.values[field] === undefined
      ? []
      : [{ field, reason: `${called} no ${field}. Leave the cell empty, or correct the kind.` }],
  );
  const ratings = Object.keys(RATINGS).filter((field) => row.values[field] !== undefined);
  if (ratings.length > 1)
    stray.push({ field: ratings[1]!, reason: 'Its rating is said twice. Keep one of the two.' });
  if (before === null && numberIn(row, 'length') === undefined)
    stray.push({ field: 'length', reason: 'How long is it? Write the length of all its pieces together.' });
  return stray;
}

/** The brakes that a row names, or the only one of the shop. */
function brakesIn(
  { machine }: Shop,
  names: Names,
  row: ReadRow,
  before: Tool | null,
): { readonly ids: readonly string[]; readonly wrong: readonly OfRow[] } {
  const brakes = machine.filter(({ stage }) => stage === 'brake');
  const known = quoted(
    brakes.map((brake) => brake.name),
    5,
  );
  const said = (textIn(row, 'brakes') ?? '').split(/\s*[,;/+&\n]\s*/).filter((text) => text !== '');
  if (said.length === 0) {
    const ids = before?.machineIds ?? (brakes.length === 1 ? [brakes[0]!.id] : []);
    const reason =
      brakes.length === 0
        ? 'The shop has no press brake yet. Add one in Shop, Machines, first.'
        : `Which brakes does it fit? Write one or several of them, with commas between: ${known}.`;
    return { ids, wrong: ids.length > 0 ? [] : [{ field: 'brakes', reason }] };
  }
  const found = said.map((text) => ({ text, brake: names.find('machine', text) }));
  const wrong = found
    .filter(({ brake }) => brake?.stage !== 'brake')
    .map(({ text }) => ({
      field: 'brakes',
      reason: `${quoted([text], 1)} is no press brake of the shop. It has ${known || 'none yet'}.`,
    }));
  return { ids: [...new Set(found.flatMap(({ brake }) => brake?.id ?? []))], wrong };
}

function toolOf(row: ReadRow, before: Tool | null, own: Pick<Tool, 'id' | 'machineIds'>): Tool {
  const kind = kindIn(row, before) ?? 'die';
  const [rating] = Object.entries(RATINGS).flatMap(([field, per]) => {
    const figure = numberIn(row, field);
    return figure === undefined ? [] : [figure * per];
  });
  // Of another kind than on record it has none of the figures that belonged to that.
  const figures = before?.kind === kind ? before : null;
  return {
    ...own,
    kind,
    name: textIn(row, 'name') ?? before?.name ?? '',
    openingMm: numberIn(row, 'v opening') ?? figures?.openingMm ?? null,
    angleDeg: numberIn(row, 'angle') ?? figures?.angleDeg ?? null,
    radiusMm: numberIn(row, 'radius') ?? figures?.radiusMm ?? null,
    gooseneck: (row.values['gooseneck'] as boolean | undefined) ?? figures?.gooseneck ?? false,
    lengthMm: numberIn(row, 'length') ?? before?.lengthMm ?? 0,
    ratingKnPerM: rating ?? before?.ratingKnPerM ?? null,
    note: textIn(row, 'note') ?? before?.note ?? '',
    revision: before?.revision ?? 0,
  };
}
