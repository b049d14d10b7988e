import type { Command } from '../../../core/edit/command.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { useCommand, usePresent } from '../../queries/hooks.ts';
import { useSayDone } from '../../form/use-act.ts';
import { toastError } from '../../ui/toast.tsx';
import { beginChangeover, endChangeover } from './kept.ts';
import type { Counts } from './use-counts.ts';

/** What can be reported from the floor about one operation; each says so in the corner, with a way back. */
export interface Floor {
  changeover(): void;
  /** @param at when it really began; null: now */
  start(machineId: string, changeoverSince: number | null, at: Instant | null): void;
  pause(reason: string): void;
  resume(): void;
  /** Leave the machine to the next operation; only while paused. */
  suspend(counts: Counts): void;
  /** @param at when it really ended; null: now */
  done(counts: Counts, at: Instant | null): void;
}

/** @param name who is at the machine; empty: not said */
export function useFloor(operation: string, name: string): Floor {
  const { mutate } = useCommand();
  const sayDone = useSayDone();
  const present = usePresent();
  const who = name === '' ? undefined : name;
  const report = (command: Command, then?: () => void) =>
    mutate(command, {
      onSuccess: ({ label, ...became }) => {
        then?.();
        sayDone(`${label}.`, became);
      },
      onError: toastError,
    });
  return {
    changeover: () => beginChangeover(operation, present()),
    start(machineId, since, given) {
      const at = given ?? present();
      const changeoverSeconds = since === null ? null : at - since;
      report({ do: 'floor.start', operation, machineId, at, changeoverSeconds, who }, endChangeover);
    },
    pause: (reason) => report({ do: 'floor.pause', operation, at: present(), reason }),
    suspend: ({ good, scrapped }) => report({ do: 'floor.suspend', operation, good, scrapped }),
    resume: () => report({ do: 'floor.resume', operation, at: present() }),
    done: ({ good, scrapped }, given) =>
      report({ do: 'floor.done', operation, at: given ?? present(), good, scrapped, who }),
  };
}
