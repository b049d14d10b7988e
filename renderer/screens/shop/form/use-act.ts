import type { Command } from '../../../../core/edit/command.ts';
import { useCommand } from '../../../queries/hooks.ts';
import { useUndoRedo } from '../../../shell/use-undo-redo.ts';
import { toast } from '../../../ui/toast.tsx';

/** Carry out a command and say so in the corner, with a way back. Throws the host's refusal. */
export function useAct(): (command: Command) => Promise<void> {
  const command = useCommand();
  const { undo } = useUndoRedo();
  return async (asked) => {
    const { label } = await command.mutateAsync(asked);
    toast({ text: `${label}: done.`, action: { label: 'Undo', act: undo } });
  };
}
