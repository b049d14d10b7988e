import { useMemo, useState } from 'react';
import { operationName } from '../../../core/edit/plan-commands.ts';
import { viewQueues, type PlanView } from '../../../core/report/plan-view.ts';
import { sentence } from '../../../core/shop/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { BoardDoing } from '../../gantt/doing.ts';
import { withMove, type Drop } from '../../gantt/drop.ts';
import { lanesOf, type Lane } from '../../gantt/lanes.ts';
import { useCommand } from '../../queries/hooks.ts';
import { toastError } from '../../ui/toast.tsx';
import { consequenceOf, consequenceWords, moveWords } from './consequence.ts';

/** A change tried out: what the board would show and what it would mean. */
interface Tried {
  /** The plan it was tried on; on any other it means nothing. */
  readonly on: PlanView;
  readonly lanes: readonly Lane[];
  readonly words: string;
}

export interface Moves {
  readonly doing: BoardDoing;
  /** The would-be plan while something is dragged, until the new plan is here. */
  readonly wouldBe: readonly Lane[] | null;
  /** What is being tried, or what was done last and what came of it. */
  readonly said: string;
}

function tryOut(shop: Shop, plan: PlanView, operation: string, drop: Drop): Tried | string {
  const queues = withMove(plan.queues, operation, drop);
  const after = viewQueues(shop, plan, queues);
  if (!after.ok) return sentence(after.problems);
  const machine = shop.machine.find((m) => m.id === drop.machineId)?.name ?? drop.machineId;
  const words = `${moveWords(operation, drop, machine)} ${consequenceWords(consequenceOf(shop, plan, after.value))}`;
  return { on: plan, lanes: lanesOf(shop, after.value), words };
}

/** Moving and pinning on the board: tried out first, then asked of the host. */
export function useMoves(shop: Shop, plan: PlanView): Moves {
  const command = useCommand();
  const [tried, setTried] = useState<Tried | null>(null);
  const [said, setSaid] = useState('');
  const fail = (error: Error) => {
    setTried(null);
    setSaid(error.message);
    toastError(error);
  };

  const doing = useMemo((): BoardDoing => {
    const show = (operation: string, drop: Drop | null): Tried | null => {
      const next = drop && tryOut(shop, plan, operation, drop);
      const shown = typeof next === 'string' ? null : next;
      setTried(shown);
      setSaid(typeof next === 'string' ? next : (shown?.words ?? ''));
      return shown;
    };
    return {
      able: (operation) => new Set(plan.operations.get(operation)?.machines.map((machine) => machine.id)),
      preview: show,
      move(operation, drop) {
        if (withMove(plan.queues, operation, drop) === plan.queues) return void show(operation, null);
        const shown = show(operation, drop);
        if (shown) setSaid(`Moved ${shown.words}`);
        command.mutate({ do: 'operation.move', operation, ...drop }, { onError: fail });
      },
      togglePin(operation) {
        const pinned = shop.pin.some((pin) => pin.id === operation);
        command.mutate({ do: pinned ? 'operation.unpin' : 'operation.pin', operation }, { onError: fail });
        setSaid(
          `${operationName(operation)} is ${pinned ? 'free again' : 'pinned: planning keeps it in its place'}.`,
        );
      },
    };
  }, [shop, plan, command]);
  return { doing, wouldBe: tried?.on === plan ? tried.lanes : null, said };
}
