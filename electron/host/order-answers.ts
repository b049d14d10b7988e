import { z } from 'zod';
import type { Answers } from '../../core/import/answers.ts';
import type { Field } from '../../core/import/field.ts';
import { importKinds } from '../../core/import/kinds.ts';
import { namesOf } from '../../core/import/names.ts';
import { plainWords } from '../../core/import/words.ts';
import { quoted } from '../../core/quoted.ts';
import type { NamedKind } from '../../core/shop/other-name.ts';
import type { Shop } from '../../core/shop/state.ts';
import { unitNamed } from '../../core/units/length.ts';
import { Refused } from '../refused.ts';

/** What the options of the command line say about a file of orders, as they were typed; each may come more than once. */
export interface SaidOfFile {
  readonly columns: readonly string[];
  readonly every: readonly string[];
  readonly dates: readonly string[];
  readonly decimals: readonly string[];
  readonly units: readonly string[];
  readonly same: readonly string[];
  readonly sheet: string | undefined;
}

/** @throws Refused with a sentence that names the option and what it takes */
export function answersOf(said: SaidOfFile, shop: Shop): Answers {
  const { fields } = importKinds.orders.fields(shop);
  const { columns, toNote } = columnsOf(said.columns, fields);
  const every = said.every.flatMap((text) => pairsOf('--every', 'material=galv', text, fields));
  return {
    columns,
    ...(toNote.length > 0 ? { toNote } : {}),
    every: Object.fromEntries(every.map(({ field, value }) => [field.name, value])),
    dates: ofEach('--dates', said.dates, fields, {
      takes: ({ sort }) => sort.is === 'date',
      read: (text) => oneOf(z.enum(['dmy', 'mdy', 'ymd']), text),
      words: 'dmy, mdy or ymd',
    }),
    decimals: ofEach('--decimals', said.decimals, fields, {
      takes: ({ sort }) => ['whole', 'number', 'length', 'gauge'].includes(sort.is),
      read: (text) => oneOf(z.enum(['point', 'comma']), text),
      words: 'point or comma',
    }),
    units: ofEach('--units', said.units, fields, {
      takes: ({ sort }) => sort.is === 'length' || sort.is === 'gauge',
      alone: ({ sort }) => sort.is === 'length',
      read: unitNamed,
      words: 'mm, cm, m, in or ft',
    }),
    same: said.same.flatMap((text) => sameOf(text, shop)),
    ...(said.sheet === undefined ? {} : { sheet: said.sheet }),
  };
}

interface Pair {
  readonly field: Field;
  readonly value: string;
}

/** "order=Job No,length=Length, m": a comma parts two only where another field and its = come behind it. */
function pairsOf(option: string, example: string, text: string, fields: readonly Field[]): Pair[] {
  return text.split(/,(?=[^,=]*=)/).map((pair) => {
    const at = pair.indexOf('=');
    if (at < 0)
      throw new Refused('bad-input', `${option} is “${text}”; write it like ${option} "${example}".`);
    const name = plainWords(pair.slice(0, at));
    const field = fields.find((one) => plainWords(one.name) === name || one.words.includes(name));
    if (!field)
      throw new Refused(
        'bad-input',
        `${option}: there is no field “${pair.slice(0, at).trim()}”. The fields are ${fields.map((one) => one.name).join(', ')}.`,
      );
    return { field, value: pair.slice(at + 1).trim() };
  });
}

/** Headings by field; of several for the note, the first is the note, and the others go to it under their headings. */
function columnsOf(
  texts: readonly string[],
  fields: readonly Field[],
): Required<Pick<Answers, 'columns' | 'toNote'>> {
  const columns: Record<string, string> = {};
  const toNote: string[] = [];
  for (const text of texts)
    for (const { field, value } of pairsOf('--columns', 'order=Job No,length=Length (m)', text, fields)) {
      const before = columns[field.name];
      if (before === undefined) columns[field.name] = value;
      else if (field.name === 'note') toNote.push(value);
      else
        throw new Refused(
          'bad-input',
          `--columns: the ${field.name} can only be one column, not both ${quoted([before])} and ${quoted([value])}.`,
        );
    }
  return { columns, toNote };
}

const oneOf = <T extends string>(schema: z.ZodType<T>, text: string): T | null => {
  const read = schema.safeParse(text.trim().toLowerCase());
  return read.success ? read.data : null;
};

interface Choice<T> {
  readonly takes: (field: Field) => boolean;
  /** Where it is said of no field by name, those that it is said of; all that take it without this. */
  readonly alone?: (field: Field) => boolean;
  /** Null: it is none of the words. */
  readonly read: (text: string) => T | null;
  readonly words: string;
}

/** "dmy" for every field that it can be said of, "due=dmy" for one. */
function ofEach<T>(
  option: string,
  texts: readonly string[],
  fields: readonly Field[],
  { takes, alone = takes, read, words }: Choice<T>,
): Record<string, T> {
  const own = fields.filter(takes);
  const said = texts.flatMap((text) =>
    text.includes('=')
      ? pairsOf(option, `${own[0]?.name}=${words.split(',')[0]}`, text, own)
      : own.filter(alone).map((field) => ({ field, value: text })),
  );
  return Object.fromEntries(
    said.map(({ field, value }) => {
      const one = read(value);
      if (one === null)
        throw new Refused(
          'bad-input',
          `${option} is “${value}”; write ${words}, or one of them for a field, like ${option} "${field.name}=${words.split(/,| or/)[0]}".`,
        );
      return [field.name, one];
    }),
  );
}

/** What a text of the file is of ours, for every kind of thing in which the shop has one of that code or name. */
function sameOf(text: string, shop: Shop): NonNullable<Answers['same']>[number][] {
  const at = text.lastIndexOf('=');
  const [other, ours] = [text.slice(0, at).trim(), text.slice(at + 1).trim()];
  if (at < 0 || other === '' || ours === '')
    throw new Refused('bad-input', `--same is “${text}”; write it like --same "RAL 7016=charcoal".`);
  const names = namesOf(shop, []);
  const kinds = (['part', 'material', 'colour'] as const).flatMap((what) => {
    const row = names.find(what, ours);
    return row ? [{ what, is: row.id }] : [];
  });
  const label = shop.material.flatMap(({ gauges }) => gauges).find((gauge) => gauge.label === ours)?.label;
  const found: { what: NamedKind; is: string }[] = [
    ...kinds,
    ...(label === undefined ? [] : [{ what: 'gauge' as const, is: label }]),
  ];
  if (found.length === 0)
    throw new Refused(
      'bad-input',
      `--same "${text}": the shop has no part, material, gauge or colour “${ours}”. Write OTHER=OURS, the file’s text first.`,
    );
  for (const { what } of kinds)
    if (shop[what].some((row) => row.id === other))
      throw new Refused(
        'bad-input',
        `--same "${text}": “${other}” is a ${what} of the shop already, so it stands for itself.`,
      );
  return found.map(({ what, is }) => ({ what, text: other, is }));
}
