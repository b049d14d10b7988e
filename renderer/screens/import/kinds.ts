import { importKinds, type ImportKindName } from '../../../core/import/kinds.ts';
import type { FileKind } from '../../../core/shop/file-layout.ts';
import { navigate, type Place } from '../../router.ts';

interface KindWords {
  /** Many of what a file holds: "Import sheet sizes". */
  readonly many: string;
  /** What a row of it is: "28 lines ready". */
  readonly row: string;
  /** The screen that shows them, as parts of its address. */
  readonly home: readonly string[];
}

/** Kinds of files in the words of the screens. */
export const KIND_WORDS: Readonly<Record<FileKind, KindWords>> = {
  orders: { many: 'orders', row: 'line', home: ['orders'] },
  finished: { many: 'finished operations', row: 'operation', home: ['learning'] },
  parts: { many: 'parts', row: 'part', home: ['shop', 'parts'] },
  materials: { many: 'metals and gauges', row: 'gauge', home: ['shop', 'materials'] },
  colours: { many: 'colours', row: 'colour', home: ['shop', 'colours'] },
  sheets: { many: 'sheet sizes', row: 'sheet size', home: ['shop', 'sheets'] },
  stock: { many: 'stock counts', row: 'count', home: ['stock'] },
  machines: { many: 'machines', row: 'machine', home: ['shop', 'machines'] },
  tools: { many: 'brake tools', row: 'tool', home: ['shop', 'tools'] },
};

/** Whether files of it are read. */
export const isRead = (kind: string | undefined): kind is ImportKindName =>
  kind !== undefined && Object.hasOwn(importKinds, kind);

export const kindsRead = Object.keys(importKinds).filter(isRead);

/** The kind of file that belongs to a place: the one being imported, else what the screen shows, else work orders. */
export function kindAt({ path }: Place): ImportKindName {
  if (path[0] === 'import') return isRead(path[1]) ? path[1] : 'orders';
  const shows = kindsRead.find((kind) => KIND_WORDS[kind].home.every((part, i) => path[i] === part));
  return shows ?? 'orders';
}

export const openImport = (kind: ImportKindName): void => navigate('import', kind);
