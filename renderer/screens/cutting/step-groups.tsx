import { ChevronDown, ChevronRight } from 'lucide-react';
import { useState } from 'react';
import { GridListItem } from 'react-aria-components';
import type { StepRow } from '../../../core/report/cutting-words.ts';
import { counted } from '../../../core/units/count.ts';
import styles from './cutting.module.css';

/** Steps under one heading that follow one another. */
interface StepGroup {
  readonly heading: string;
  readonly first: number;
  readonly steps: number;
  readonly blanks: number;
  readonly folded: boolean;
}

export type StepItem =
  | { readonly id: string; readonly row: StepRow; readonly group: null }
  | { readonly id: string; readonly row: null; readonly group: StepGroup };

/** The rows with a head above each group; those of a folded group are left out. */
export function itemsOf(rows: readonly StepRow[], folded: ReadonlySet<string>): StepItem[] {
  const items: StepItem[] = [];
  rows.forEach((row, at) => {
    const { heading, number } = row;
    if (heading !== null && rows[at - 1]?.heading !== heading) {
      const until = rows.findIndex((one, n) => n > at && one.heading !== heading);
      const own = rows.slice(at, until === -1 ? rows.length : until);
      const blanks = own.reduce((sum, one) => sum + one.blanks, 0);
      const group = { heading, first: number, steps: own.length, blanks, folded: folded.has(heading) };
      items.push({ id: `group ${number}`, row: null, group });
    }
    if (heading === null || !folded.has(heading)) items.push({ id: String(number), row, group: null });
  });
  return items;
}

/** The head of a group; Enter or a press folds it up and opens it. */
export const GroupHead = ({ id, group }: { id: string; group: StepGroup }) => {
  const { heading, first, steps, blanks, folded } = group;
  const which = steps === 1 ? `step ${first}` : `steps ${first} to ${first + steps - 1}`;
  const Fold = folded ? ChevronRight : ChevronDown;
  return (
    <GridListItem id={id} textValue={heading} className={styles.heading ?? ''}>
      <Fold size={16} aria-hidden />
      <strong>{heading}</strong>
      <span
        className={styles.soft}
      >{`${which}, ${counted(blanks, 'blank')}${folded ? ', folded' : ''}`}</span>
    </GridListItem>
  );
};

/** Headings whose steps are folded up, and what folds one up or opens it. */
export function useFolded(): [ReadonlySet<string>, (heading: string) => void] {
  const [folded, setFolded] = useState<ReadonlySet<string>>(new Set());
  const fold = (heading: string) =>
    setFolded((before) => {
      const others = new Set([...before].filter((one) => one !== heading));
      return before.has(heading) ? others : others.add(heading);
    });
  return [folded, fold];
}

/** The number in a row's key: of a group's head that of its first step. */
export const numberIn = (key: unknown): number => Number(String(key).replace('group ', ''));
