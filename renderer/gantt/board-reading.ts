import type { ReactNode } from 'react';
import type { MenuEntry } from '../ui/menu.tsx';
import type { Fold } from './fold.ts';
import type { Lane } from './lanes.ts';

/** Why a line's metal is not there, by shear operation, as core/planning/metal-missing.ts says. */
export type Lacking = ReadonlyMap<string, 'missing' | 'overdue' | 'awaited'>;

/** What helps to read the board; nothing of it changes the plan. Operations are named by id. */
export interface BoardReading {
  /** How instants become the board seconds that lanes and horizon come in. */
  readonly fold: Fold;
  /** The operations that the filter lets through, the others fade; null: no filter. */
  readonly fits: ReadonlySet<string> | null;
  readonly lacking: Lacking;
  /** The plan that floor and paper follow, in board seconds; null: not shown. */
  readonly published: readonly Lane[] | null;
  /** What is told of an operation beside the pointer. */
  readonly card: (operation: string) => ReactNode;
  /** What can be done with it. */
  readonly menu: (operation: string) => readonly MenuEntry[];
}
