import { useHistory, useRedo, useUndo } from '../queries/hooks.ts';
import { toast, toastError } from '../ui/toast.tsx';

export interface UndoRedo {
  /** What the next undo takes back, in the history's words; null: nothing. */
  readonly undoLabel: string | null;
  readonly redoLabel: string | null;
  /** The step that the next undo takes back. */
  readonly undoStepId: number | null;
  readonly undo: () => void;
  readonly redo: () => void;
}

/** Undo and redo with their labels; a refusal becomes a toast. */
export function useUndoRedo(): UndoRedo {
  const { data } = useHistory();
  const undo = useUndo();
  const redo = useRedo();
  const said = (verb: string) => ({
    onSuccess: ({ label }: { label: string | null }) => {
      if (label) toast({ text: `${verb}: ${label}.` });
    },
    onError: toastError,
  });
  return {
    undoLabel: data?.undo[0]?.label ?? null,
    redoLabel: data?.redo[0]?.label ?? null,
    undoStepId: data?.undo[0]?.id ?? null,
    undo: () => undo.mutate(undefined, said('Undone')),
    redo: () => redo.mutate(undefined, said('Redone')),
  };
}
