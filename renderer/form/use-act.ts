import { contract } from '../../core/contract/index.ts';
import type { Command } from '../../core/edit/command.ts';
import { useCommand } from '../queries/hooks.ts';
import { invoke } from '../queries/invoke.ts';
import { useUndoRedo } from '../shell/use-undo-redo.ts';
import { toast, toastError } from '../ui/toast.tsx';

const newestStep = async (): Promise<number | null> =>
  (await invoke(contract.editHistory, {})).undo[0]?.id ?? null;

/** Say what was just done, with a way back that never takes back something newer instead. */
export function useSayDone(): (text: string) => Promise<void> {
  const { undo } = useUndoRedo();
  return async (text) => {
    const step = await newestStep();
    const back = async () => {
      if ((await newestStep()) === step) undo();
      else
        toast({
          text: 'Something else was done since. Undo in the header undoes the newest step first.',
        });
    };
    toast({ text, action: { label: 'Undo', act: () => void back().catch(toastError) } });
  };
}

/** Carry out a command and say so in the corner. Throws the host's refusal. */
export function useAct(): (command: Command) => Promise<void> {
  const command = useCommand();
  const sayDone = useSayDone();
  return async (asked) => {
    const { label } = await command.mutateAsync(asked);
    await sayDone(`${label}: done.`);
  };
}
