import type { FileKind, FileLayout, Layout } from '../shop/file-layout.ts';
import { otherNameId, type OtherName } from '../shop/other-name.ts';
import type { Shop } from '../shop/state.ts';
import type { Answers } from './answers.ts';
import type { ReadField } from './read-rows.ts';
import type { ColumnUse } from './propose.ts';
import { plainWords } from './words.ts';

/** What is known of files of one shape: the same kind, the same headings in the same order. */

/** A short name for a shape. FNV-1a, 32 bits, of the headings: Fowler, Noll and Vo, 1991. */
export function shapeOf(kind: FileKind, titles: readonly string[]): string {
  let hash = 0x811c9dc5;
  for (const letter of titles.map(plainWords).join('\n')) {
    hash ^= letter.codePointAt(0) ?? 0;
    hash = Math.imul(hash, 0x01000193) >>> 0;
  }
  return `${kind}:${titles.length}:${hash.toString(16).padStart(8, '0')}`;
}

export const rememberedLayout = (shop: Shop, id: string): Layout | null =>
  shop.fileLayout.find((one) => one.id === id)?.layout ?? null;

/** How the file was read, for the next of its shape; what the file says itself (units, marks, dates) needs no memory. */
export function layoutOf(
  id: string,
  kind: FileKind,
  uses: readonly ColumnUse[],
  fields: readonly ReadField[],
  answers: Answers,
  before: Layout | null,
): FileLayout {
  const columns: Record<string, string> = {};
  for (const { field } of fields) {
    const use = uses.find((one) => one.field?.name === field.name);
    if (use) columns[field.name] = use.title;
    else if (answers.columns?.[field.name] === '' || before?.columns[field.name] === '')
      columns[field.name] = '';
  }
  const layout: Layout = {
    columns,
    units: { ...before?.units, ...answers.units },
    dates: { ...before?.dates, ...answers.dates },
    decimals: { ...before?.decimals, ...answers.decimals },
    toNote: uses.filter(({ toNote }) => toNote).map(({ title }) => title),
  };
  return { id, kind, layout, revision: 0 };
}

/** What was said that texts stand for. */
export const namesSaid = ({ same = [] }: Answers): OtherName[] =>
  same.map(({ what, text, is }) => ({
    id: otherNameId(what, text),
    kind: what,
    text: text.trim(),
    oursId: is,
    revision: 0,
  }));
