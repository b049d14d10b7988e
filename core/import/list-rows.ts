import type { FormKind, FormRow } from '../edit/command.ts';
import { saveRow } from '../edit/row-commands.ts';
import { rowName } from '../edit/row-name.ts';
import { code } from '../fields.ts';
import { freeCodeBut } from '../code.ts';
import { sentence } from '../result.ts';
import { otherNameId, type NamedKind, type OtherName } from '../shop/other-name.ts';
import { sameContent } from '../shop/row-change.ts';
import { rowKinds, type RowOf, type Shop } from '../shop/state.ts';
import type { Judged, JudgeContext, JudgedRow, RowIssue } from './kind.ts';
import type { ReadRow } from './read-rows.ts';

/** What files of the shop's own lists have in common: a row of the file becomes a row of the shop. */

/** The lists that files fill. */
export type ListKind = Extract<FormKind, 'material' | 'colour' | 'sheet' | 'part' | 'machine' | 'tool'>;

export interface ListOf<K extends ListKind> {
  readonly kind: K;
  /** The fields of a file by those of the row, for what is refused. */
  readonly fieldOf: Readonly<Record<string, string>>;
  /** A row of the shop as a file's cells show it, by field. */
  readonly cells: (shop: Shop, row: RowOf<K>) => Readonly<Record<string, string>>;
}

/** A row of a file with what it makes of the shop's. */
export interface Becomes<K extends ListKind> {
  readonly row: ReadRow;
  /** As it stands in the shop; null: it is new. */
  readonly before: RowOf<K> | null;
  readonly after: RowOf<K>;
  /** What to know of it: figures that are usual ones. Whole sentences or ''. */
  readonly words: string;
  /** What the file calls it besides its code. */
  readonly others: readonly OtherName[];
}

export type OfRow = Omit<RowIssue, 'row'>;

/** What a list would refuse of a row, by the fields of the file. */
export function refusalsOf<K extends ListKind>(
  shop: Shop,
  { kind, fieldOf }: Pick<ListOf<K>, 'kind' | 'fieldOf'>,
  row: RowOf<K>,
): OfRow[] {
  const fieldNamed = (name: unknown): string | null => fieldOf[String(name)] ?? null;
  const fits = rowKinds[kind].safeParse(row);
  if (!fits.success)
    return fits.error.issues.map(({ path, message }) => ({
      field: fieldNamed(path[0]),
      reason: `The ${fieldNamed(path[0]) ?? rowName(kind, row.id)} cannot be so: ${message}.`,
    }));
  const saved = saveRow(shop, kind, row);
  if (saved.ok) return [];
  return saved.issues.map((one) => ({ field: fieldNamed(one.field), reason: sentence([one]) }));
}

/** Judges the rows of a file that each become one row of a list; what the file lacks stays as it is. */
export function judgeList<K extends ListKind>(
  list: ListOf<K>,
  rows: readonly Becomes<K>[],
  { shop }: JudgeContext,
  before: { readonly issues: readonly RowIssue[]; readonly notes?: readonly string[] },
): Judged {
  const judged = new Map<number, JudgedRow>();
  const issues: RowIssue[] = [...before.issues];
  const taken: Becomes<K>[] = [];
  const seen = new Map<string, number>();
  for (const one of rows) {
    const { row, after } = one;
    const subject = rowName(list.kind, after.id);
    // Codes that differ only in capitals are one.
    const key = after.id.toLowerCase();
    const other = seen.get(key);
    seen.set(key, other ?? row.row);
    const found =
      other === undefined
        ? refusalsOf(shop, list, after)
        : [{ field: null, reason: `Row ${other} is ${subject} already. Keep one of the rows.` }];
    issues.push(...found.map((issue) => ({ ...issue, row: row.row })));
    if (found.length > 0) continue;
    const state = one.before === null ? 'new' : sameContent(one.before, after) ? 'known' : 'changed';
    if (state !== 'known') taken.push(one);
    const was = one.before && state === 'changed' ? changedCells(list, shop, one.before, after) : {};
    judged.set(row.row, { state, subject, words: state === 'known' ? '' : one.words, was });
  }
  return {
    rows: judged,
    issues,
    notes: before.notes ?? [],
    missing: [],
    command: commandOf(
      taken.map(({ after }) => ({ kind: list.kind, row: after }) as FormRow),
      taken,
    ),
  };
}

/** What stands in the shop, where a row changes it. */
function changedCells<K extends ListKind>(
  { cells }: ListOf<K>,
  shop: Shop,
  before: RowOf<K>,
  after: RowOf<K>,
): Record<string, string> {
  const now = cells(shop, after);
  return Object.fromEntries(
    Object.entries(cells(shop, before)).filter(([field, text]) => now[field] !== text),
  );
}

/** Takes the rows, and remembers what the file calls them. */
export const commandOf = (
  rows: readonly FormRow[],
  named: readonly { readonly others: readonly OtherName[] }[],
): Judged['command'] =>
  rows.length === 0
    ? null
    : (fileName, { names, layout }) => ({
        do: 'rows.import',
        fileName,
        rows,
        remembered: { names: [...names, ...named.flatMap(({ others }) => others)], layout },
      });

/** Codes for rows that are new: the file's own where it can be one, else one made of it. */
export class Codes {
  /** In small letters: codes that differ only in capitals are one. */
  readonly #taken: Set<string>;
  readonly #made = new Map<string, string>();
  constructor(rows: readonly { readonly id: string }[]) {
    this.#taken = new Set(rows.map(({ id }) => id.toLowerCase()));
  }
  for(text: string): string {
    if (!code.safeParse(text).success) return this.made(text);
    this.#taken.add(text.toLowerCase());
    return text;
  }
  /** One made of a name. @param of what has that code; the same has it again, whatever the case */
  made(text: string, of = text): string {
    const key = of.toLowerCase();
    const made = this.#made.get(key) ?? freeCodeBut(text, (one) => this.#taken.has(one));
    this.#made.set(key, made);
    this.#taken.add(made);
    return made;
  }
}

/** The text as another name of a row that has another code and another name; else none. */
export const otherNames = (
  kind: NamedKind,
  text: string | undefined,
  row: { readonly id: string; readonly name: string },
): OtherName[] =>
  text === undefined || [row.id, row.name].some((own) => own.toLowerCase() === text.toLowerCase())
    ? []
    : [{ id: otherNameId(kind, text), kind, text, oursId: row.id, revision: 0 }];

/** What the cells of a row say, as the sorts of their fields read them. */
export const textIn = ({ values }: ReadRow, field: string): string | undefined =>
  values[field] as string | undefined;
export const numberIn = ({ values }: ReadRow, field: string): number | undefined =>
  values[field] as number | undefined;
