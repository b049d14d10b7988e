import type { Block } from '../../core/edit/blocks.ts';

/** What the board asks of the screen around it. Operations are named by id. */
export interface BoardDoing {
  /** Machines that can do all of these operations. */
  able(operations: readonly string[]): ReadonlySet<string>;
  /** Why another machine cannot, a sentence that names the first of them that it cannot do. */
  whyNot(operations: readonly string[], machineId: string): string;
  /** Tell the user why a move cannot be. */
  refuse(operations: readonly string[], machineId: string): void;
  /** Show what letting go here would do, or (null) stop showing it. */
  preview(blocks: readonly Block[] | null): void;
  move(blocks: readonly Block[]): void;
  /** Pin them; unpin them where all are pinned. */
  togglePin(operations: readonly string[]): void;
  /** Behind all that starts the same day on their machines. */
  postpone(operations: readonly string[]): void;
  /** The operation's run from there on goes behind the next run. */
  splitRun(operation: string): void;
  /** Say why the operation's line ends when it does. */
  explain(operation: string): void;
}
