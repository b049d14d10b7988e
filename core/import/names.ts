import type { Material } from '../material/material.ts';
import { otherNameId, type NamedKind } from '../shop/other-name.ts';
import type { Shop } from '../shop/state.ts';
import { closeWords, keystrokes } from './words.ts';

/** What the shop has rows of, that files name. */
export type RowName = Extract<NamedKind, 'part' | 'material' | 'colour' | 'machine'>;

interface Named {
  readonly id: string;
  readonly name: string;
}

/** What the shop calls things, and what files call them besides. */
export interface Names {
  /** The row that a text names, by its code, its name or another name, whatever the case; null: none. */
  find<K extends RowName>(kind: K, text: string): Shop[K][number] | null;
  /** What was said once that a text stands for; null: nothing. */
  said(kind: NamedKind, text: string): string | null;
  /** The rows whose code or name is fewest keystrokes away, nearest first. */
  nearest(kind: RowName, text: string): readonly Named[];
}

/** So many are offered where a text is not known. */
const OFFERED = 5;

/** @param same what was said of this file's texts; it goes before what was remembered */
export function namesOf(
  shop: Shop,
  same: readonly { readonly what: NamedKind; readonly text: string; readonly is: string }[],
): Names {
  const others = new Map(shop.otherName.map(({ id, oursId }) => [id, oursId]));
  for (const { what, text, is } of same) others.set(otherNameId(what, text), is);
  const rows = {
    part: byText(shop.part),
    material: byText(shop.material),
    colour: byText(shop.colour),
    machine: byText(shop.machine),
  };
  const said: Names['said'] = (kind, text) => others.get(otherNameId(kind, text)) ?? null;
  return {
    said,
    find: <K extends RowName>(kind: K, text: string) => {
      const own = rows[kind] as ReadonlyMap<string, Shop[K][number]>;
      const other = said(kind, text);
      return (
        own.get(text) ?? own.get(text.toLowerCase()) ?? (other === null ? null : (own.get(other) ?? null))
      );
    },
    nearest: (kind, text) => nearestOf(shop[kind], text),
  };
}

/** Codes go before names, and a code as it is written before one that differs in capitals. */
function byText<T extends Named>(rows: readonly T[]): ReadonlyMap<string, T> {
  const found = new Map<string, T>();
  for (const row of rows) found.set(row.id, row);
  for (const texts of [(row: T) => row.id.toLowerCase(), (row: T) => row.name.toLowerCase()])
    for (const row of rows) if (!found.has(texts(row))) found.set(texts(row), row);
  return found;
}

function nearestOf(rows: readonly Named[], text: string): readonly Named[] {
  const close = closeWords(text).slice(0, 60);
  const far = (name: string): number => {
    const other = closeWords(name).slice(0, 60);
    // A code inside a longer text, "7016" in "RAL 7016 matt", is nearer than any slip.
    if (other.length > 2 && close.includes(other)) return 0.5;
    return keystrokes(close, other);
  };
  return rows
    .map(({ id, name }) => ({ id, name, by: Math.min(far(id), far(name)) }))
    .sort((a, b) => a.by - b.by || (a.id < b.id ? -1 : 1))
    .slice(0, OFFERED)
    .map(({ id, name }) => ({ id, name }));
}

/** The labels of a metal's gauges as choices. */
export const gaugeChoices = (material: Material): readonly Named[] =>
  material.gauges.map(({ label }) => ({ id: label, name: label }));
