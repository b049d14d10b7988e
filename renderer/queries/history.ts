import type { OutputOf } from '../../core/contract/call.ts';
import type { editHistory } from '../../core/contract/edit.ts';

type History = OutputOf<typeof editHistory>;

/**
 * Whether a step is the last thing done: nothing was done after it, and it is not undone. What is said of its effect
 * holds so long. A step so new that the history read so far does not list it counts as the last.
 */
export const standsLast = (history: History | undefined, stepId: number): boolean =>
  (history?.undo[0]?.id ?? 0) <= stepId && !history?.redo.some(({ id }) => id === stepId);
