import type { Drop } from './drop.ts';

/** What the board asks of the screen around it. Operations are named by id. */
export interface BoardDoing {
  /** Machines that can do the operation. */
  able(operation: string): ReadonlySet<string>;
  /** Why another machine cannot, a sentence. */
  whyNot(operation: string, machineId: string): string;
  /** Tell the user why a move cannot be. */
  refuse(operation: string, machineId: string): void;
  /** Show what letting go here would do, or (null) stop showing it. */
  preview(operation: string, drop: Drop | null): void;
  move(operation: string, drop: Drop): void;
  togglePin(operation: string): void;
  /** Say why the operation's line ends when it does. */
  explain(operation: string): void;
}
