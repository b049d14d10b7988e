import { standsLast } from '../queries/history.ts';
import { useHistory, useRedo, useUndo } from '../queries/hooks.ts';
import { toast, toastError } from '../ui/toast.tsx';

export interface UndoRedo {
  /** What the next undo takes back, in the history's words; null: nothing. */
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** Whether there may be something: also while what was just done is still being read. */
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /** The step that the next undo takes back. */
  readonly undoStepId: number | null;
  /** Whether nothing was done after a step and it is not undone. */
  readonly standsLast: (stepId: number) => boolean;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** Undo and redo with their labels; a refusal becomes a toast. */
export function useUndoRedo(): UndoRedo {
  const { data, isFetching } = useHistory();
  const undo = useUndo();
  const redo = useRedo();
  // While the history is read again, what was done last is not in it yet: the host knows it.
  // Of several in a row each is said.
  const say = (verb: string, step: Promise<{ label: string | null }>): void =>
    void step.then(({ label }) => label && toast({ text: `${verb}: ${label}.` }), toastError);
  return {
    undoLabel: data?.undo[0]?.label ?? null,
    redoLabel: data?.redo[0]?.label ?? null,
    canUndo: isFetching || data?.undo[0] !== undefined,
    canRedo: isFetching || data?.redo[0] !== undefined,
    undoStepId: data?.undo[0]?.id ?? null,
    standsLast: (stepId) => standsLast(data, stepId),
    undo: () => say('Undone', undo.mutateAsync(isFetching ? null : (data?.undo[0]?.id ?? null))),
    redo: () => say('Redone', redo.mutateAsync(isFetching ? null : (data?.redo[0]?.id ?? null))),
  };
}
