import { applyCommand } from '../../../core/edit/apply.ts';
import type { Answers } from '../../../core/import/answers.ts';
import { importKinds, type ImportKindName } from '../../../core/import/kinds.ts';
import { readFile } from '../../../core/import/read-file.ts';
import type { RowState } from '../../../core/import/reading.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { NOW } from '../../support/builders.ts';
import { gridOf, nothingPast } from './order-table.ts';

/** A file of one of the shop's lists: its header first, cells parted by bars. */
export function readList(kind: ImportKindName, shop: Shop, lines: readonly string[], answers: Answers = {}) {
  const { reading, command } = readFile(importKinds[kind], {
    shop,
    fileName: `${kind}.csv`,
    grid: gridOf(lines.map((line) => line.split('|').map((cell) => cell.trim()))),
    answers,
    now: NOW,
    past: nothingPast,
  });
  const of = (state: RowState): number[] =>
    reading.rows.filter((row) => row.state === state).map(({ row }) => row);
  const row = (number: number) => reading.rows.find((one) => one.row === number)!;
  return {
    reading,
    command,
    of,
    row,
    cell: (number: number, field: string) => row(number).cells.find((one) => one.field === field),
    /** Why a row cannot be taken, all of it. */
    why: (number: number): string =>
      [row(number).words, ...row(number).cells.map(({ issue = '' }) => issue)].filter(Boolean).join(' '),
  };
}

/** What a file makes of a shop, and what its one step is called. */
export function taken(shop: Shop, { command }: Pick<ReturnType<typeof readList>, 'command'>) {
  if (!command) throw new Error('nothing of the file can be taken');
  const edit = applyCommand(shop, command);
  if (!edit.ok) throw new Error(edit.issues.map(({ message }) => message).join(' '));
  const { label, changes } = edit.value;
  const after = withChanges(shop, changes);
  return { label, after, undone: withChanges(after, invert(changes)) };
}
