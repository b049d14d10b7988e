import { standsLast } from '../queries/history.ts';
import { useHistory, useRedo, useUndo } from '../queries/hooks.ts';
import { toast, toastError } from '../ui/toast.tsx';

export interface UndoRedo {
  /** What the next undo takes back, in the history's words; null: nothing. */
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** The step that the next undo takes back. */
  readonly undoStepId: number | null;
  /** Whether nothing was done after a step and it is not undone. */
  readonly standsLast: (stepId: number) => boolean;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** Undo and redo with their labels; a refusal becomes a toast. */
export function useUndoRedo(): UndoRedo {
  const { data } = useHistory();
  const undo = useUndo();
  const redo = useRedo();
  // Of several in a row each is said.
  const say = (verb: string, step: Promise<{ label: string | null }>): void =>
    void step.then(({ label }) => label && toast({ text: `${verb}: ${label}.` }), toastError);
  return {
    undoLabel: data?.undo[0]?.label ?? null,
    redoLabel: data?.redo[0]?.label ?? null,
    undoStepId: data?.undo[0]?.id ?? null,
    standsLast: (stepId) => standsLast(data, stepId),
    undo: () => say('Undone', undo.mutateAsync(data?.undo[0]?.id ?? null)),
    redo: () => say('Redone', redo.mutateAsync(data?.redo[0]?.id ?? null)),
  };
}
