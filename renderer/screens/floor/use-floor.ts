import type { Command } from '../../../core/edit/command.ts';
import type { OperationRecord } from '../../../core/shop/plan.ts';
import type { Instant } from '../../../core/units/brand.ts';
import { useCommand, usePresent } from '../../queries/hooks.ts';
import { useSayDone } from '../../form/use-act.ts';
import { toastError } from '../../ui/toast.tsx';
import type { Counts } from './use-counts.ts';

/** What can be reported from the floor about one operation; each says so in the corner, with a way back. */
export interface Floor {
  changeover(machineId: string): void;
  /** @param at when it really began; null: now */
  start(machineId: string, at: Instant | null): void;
  pause(reason: string): void;
  resume(): void;
  /** Leave the machine to the next operation; only while paused. */
  suspend(): void;
  /** Pause, where it is not paused yet, and suspend. */
  leave(reason: string, record: Pick<OperationRecord, 'pauses'>): void;
  /** @param more pieces beyond those counted; @param at when it really ended; null: now */
  done(more: Counts, at: Instant | null): void;
}

/** @param name who is at the machine; empty: not said */
export function useFloor(operation: string, name: string): Floor {
  const { mutateAsync } = useCommand();
  const sayDone = useSayDone();
  const present = usePresent();
  const who = name === '' ? undefined : name;
  // The command's own promise says what came of it: the card, and its listeners, may have gone by then.
  const report = (command: Command, then?: () => void) =>
    void mutateAsync(command).then(({ label, ...became }) => {
      then?.();
      sayDone(`Kept: ${label}.`, became);
    }, toastError);
  const when = (at: Instant | null) => (at === null ? { at: present() } : { at, given: true as const });
  const suspend: Command = { do: 'floor.suspend', operation, good: 0, scrapped: 0 };
  return {
    changeover: (machineId) => report({ do: 'floor.changeover', operation, machineId, at: present() }),
    start: (machineId, at) =>
      report({ do: 'floor.start', operation, machineId, ...when(at), changeoverSeconds: null, who }),
    pause: (reason) => report({ do: 'floor.pause', operation, at: present(), reason }),
    suspend: () => report(suspend),
    leave: (reason, { pauses }) =>
      pauses.at(-1)?.to === null
        ? report(suspend)
        : report({ do: 'floor.pause', operation, at: present(), reason }, () => report(suspend)),
    resume: () => report({ do: 'floor.resume', operation, at: present() }),
    done: (more, at) => report({ do: 'floor.done', operation, ...when(at), ...more, who }),
  };
}
