import { useMemo, useState } from 'react';
import { useQueryClient } from '@tanstack/react-query';
import type { Command } from '../../../core/edit/command.ts';
import { operationName } from '../../../core/edit/plan-commands.ts';
import { seenQueues } from '../../../core/edit/stale.ts';
import { viewQueues, type PlanView } from '../../../core/planning/plan-view.ts';
import { stepWord } from '../../../core/part/stage.ts';
import { stageOfOperation } from '../../../core/shop/order.ts';
import { sentence } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { BoardDoing } from '../../gantt/doing.ts';
import { withMove, type Drop } from '../../gantt/drop.ts';
import { lanesOf, type Lane } from '../../gantt/lanes.ts';
import { useBoardView } from '../../gantt/view.ts';
import { standsLast } from '../../queries/history.ts';
import { useCommand, useHistory } from '../../queries/hooks.ts';
import { keys } from '../../queries/keys.ts';
import type { ShopCopy } from '../../queries/shop-copy.ts';
import { sayRefused } from '../../form/say-refused.ts';
import { hushToast } from '../../ui/toast.tsx';
import { consequenceOf, consequenceWords, moveWords } from './consequence.ts';

/** A change tried out: what the board would show and what it would mean. */
interface Tried {
  /** The plan it was tried on; on any other it means nothing. */
  readonly on: PlanView;
  readonly lanes: readonly Lane[];
  readonly words: string;
}

interface Moves {
  readonly doing: BoardDoing;
  /** The would-be plan while something is dragged, until the new plan is here. */
  readonly wouldBe: readonly Lane[] | null;
  /** What is being tried, or what was done last and what came of it. */
  readonly said: string;
}

function tryOut(shop: Shop, plan: PlanView, operation: string, drop: Drop): Tried | string {
  const queues = withMove(plan.queues, operation, drop);
  const after = viewQueues(shop, plan, queues);
  if (!after.ok) return sentence(after.issues);
  const words = `${moveWords(operation, drop, nameOf(shop, drop.machineId))} ${consequenceWords(consequenceOf(shop, plan, after.value))}`;
  return { on: plan, lanes: lanesOf(shop, after.value), words };
}

/**
 * Words for the status line. They hold as long as `step`, the newest step of the history when they came true, is the last
 * thing done; null: the host is still asked.
 */
interface Said {
  readonly words: string;
  readonly step: number | null;
}
const NOTHING: Said = { words: '', step: null };

function whyNot({ operations }: PlanView, shop: Shop, operation: string, machineId: string): string {
  const name = nameOf(shop, machineId);
  const refused = operations.get(operation)?.refused.find((r) => r.machineId === machineId);
  if (refused) return `${name}: ${refused.reason}`;
  return `No ${stepWord[stageOfOperation(operation)]} on ${name}.`;
}

const nameOf = ({ machine }: Shop, machineId: string): string =>
  machine.find(({ id }) => id === machineId)?.name ?? machineId;

const moveOn = (now: Shop, operation: string, drop: Drop): Command => ({
  ...{ do: 'operation.move', blocks: [{ operations: [operation], ...drop }], seen: seenQueues(now) },
});

const seenKey = (shop: Shop): string => JSON.stringify(seenQueues(shop));

/** Moving and pinning on the board: tried out first, then asked of the host. */
export function useMoves(shop: Shop, plan: PlanView): Moves {
  const { mutate } = useCommand();
  const client = useQueryClient();
  const [tried, setTried] = useState<Tried | null>(null);
  const [said, setSaid] = useState<Said>(NOTHING);
  const history = useHistory().data;
  const newest = history?.undo[0]?.id ?? 0;

  const doing = useMemo((): BoardDoing => {
    // Toasts lie over the status line: a new sentence there takes them away.
    const say = (words: Said) => {
      if (words.words !== '') hushToast();
      setSaid(words);
    };
    const stands = () => client.getQueryData<ShopCopy>(keys.shop)?.shop ?? shop;
    const carryOut = (commandOn: (now: Shop) => Command, words: string, wordsAgain: string) => {
      say({ words, step: null });
      mutate(commandOn(stands()), {
        onSuccess: ({ stepId }) => say({ words, step: stepId }),
        onError: (error) => {
          setTried(null);
          say({ words: error.message, step: newest });
          const act = () => carryOut(commandOn, wordsAgain, wordsAgain);
          sayRefused(error, { label: 'Do it again', act });
        },
      });
    };
    const preview = (operation: string, drop: Drop | null): Tried | null => {
      const next = drop && tryOut(shop, plan, operation, drop);
      const shown = typeof next === 'string' ? null : next;
      setTried(shown);
      say({ words: typeof next === 'string' ? next : (shown?.words ?? ''), step: newest });
      return shown;
    };
    return {
      able: (operation) => new Set(plan.operations.get(operation)?.machines.map((machine) => machine.id)),
      whyNot: (operation, machineId) => whyNot(plan, shop, operation, machineId),
      refuse: (operation, machineId) =>
        say({ words: whyNot(plan, shop, operation, machineId), step: newest }),
      preview,
      move(operation, drop) {
        // A key may come again before the screen shows what it did last: it is of a plan that is gone.
        if (seenKey(stands()) !== seenKey(shop)) return;
        if (withMove(plan.queues, operation, drop) === plan.queues) return void preview(operation, null);
        const shown = preview(operation, drop);
        if (!shown) return;
        const again = `Moved ${moveWords(operation, drop, nameOf(shop, drop.machineId))}`;
        carryOut((now) => moveOn(now, operation, drop), `Moved ${shown.words}`, again);
      },
      explain: (operation) => useBoardView.getState().show('why', operation),
      togglePin(operation) {
        const pinned = shop.pin.some((pin) => pin.id === operation);
        const now = pinned ? 'not pinned any more' : 'pinned: planning keeps it in its position';
        const words = `${operationName(operation)} is ${now}.`;
        const command = pinned ? 'operation.unpin' : 'operation.pin';
        carryOut((now) => ({ do: command, operations: [operation], seen: seenQueues(now) }), words, words);
      },
    };
  }, [shop, plan, mutate, newest, client]);
  const stale = said.step !== null && !standsLast(history, said.step);
  return { doing, wouldBe: tried?.on === plan ? tried.lanes : null, said: stale ? '' : said.words };
}
