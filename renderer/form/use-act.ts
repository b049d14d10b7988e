import type { Command } from '../../core/edit/command.ts';
import { useCommand, useTakeBack, useUndo } from '../queries/hooks.ts';
import { toast, toastError } from '../ui/toast.tsx';

/** What something became: a step that can be undone, or a fact that can be taken back; both null: nothing changed. */
export interface Became {
  readonly stepId: number | null;
  readonly factId: number | null;
}

/** So long the host lets a report be taken back without a reason. */
const TAKE_BACK_MS = 60_000;

/** Say what was just done, with the way back from that very thing, whatever was done since. */
export function useSayDone(): (text: string, became: Became) => void {
  const undo = useUndo();
  const takeBack = useTakeBack();
  return (text, { stepId, factId }) => {
    const say = (words: string, done: Promise<{ label: string | null }>) =>
      void done.then(({ label }) => label && toast({ text: `${words}${label}.` }), toastError);
    if (factId !== null)
      toast({
        text,
        forMs: TAKE_BACK_MS,
        action: {
          label: 'Take back',
          act: () => say('', takeBack.mutateAsync({ factId, reason: '' })),
        },
      });
    else if (stepId !== null)
      toast({ text, action: { label: 'Undo', act: () => say('Undone: ', undo.mutateAsync(stepId)) } });
    else toast({ text });
  };
}

/** Carry out a command and say so in the corner. Throws the host's refusal. */
export function useAct(): (command: Command) => Promise<void> {
  const command = useCommand();
  const sayDone = useSayDone();
  return async (asked) => {
    const { label, ...became } = await command.mutateAsync(asked);
    sayDone(`${label}: done.`, became);
  };
}
