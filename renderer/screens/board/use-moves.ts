import { useCallback, useMemo, useState } from 'react';
import { useQueryClient } from '@tanstack/react-query';
import { withBlocks, type Block } from '../../../core/edit/blocks.ts';
import type { Command } from '../../../core/edit/command.ts';
import { seenQueues } from '../../../core/edit/stale.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { addDays, startOfDay } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { laterPart, pastRun, postponed } from '../../gantt/block-moves.ts';
import type { BoardDoing } from '../../gantt/doing.ts';
import type { Lane } from '../../gantt/lanes.ts';
import { useBoardView } from '../../gantt/view.ts';
import { standsLast } from '../../queries/history.ts';
import { useCommand, useHistory } from '../../queries/hooks.ts';
import { keys } from '../../queries/keys.ts';
import type { ShopCopy } from '../../queries/shop-copy.ts';
import { sayRefused } from '../../form/say-refused.ts';
import { hushToast } from '../../ui/toast.tsx';
import { moveWords } from './consequence.ts';
import { ableFor, nameIn, pinWords, tryOut, whyNot, type Tried } from './try-out.ts';

interface Moves {
  readonly doing: BoardDoing;
  /** The would-be plan while something is dragged, until the new plan is here. */
  readonly wouldBe: readonly Lane[] | null;
  /** What is being tried, or what was done last and what came of it. */
  readonly said: string;
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

const moveOn = (now: Shop, blocks: readonly Block[]): Command => ({
  ...{ do: 'operation.move', blocks, seen: seenQueues(now) },
});

const pinOn = (now: Shop, ids: readonly string[], pinned: boolean): Command => ({
  ...{ do: pinned ? 'operation.unpin' : 'operation.pin', operations: [...ids], seen: seenQueues(now) },
});

const seenKey = (shop: Shop): string => JSON.stringify(seenQueues(shop));

const NOWHERE = 'It stands there already, or what has started is in the way.';
const NOT_SPLIT = 'No run stands behind this one on its machine, so there is nothing to part it with.';

/** What the desk asks of the host, and the status line's words about it. */
function useCarryOut(shop: Shop, onRefused: () => void) {
  const { mutate } = useCommand();
  const client = useQueryClient();
  const [said, setSaid] = useState<Said>(NOTHING);
  const history = useHistory().data;
  const newest = history?.undo[0]?.id ?? 0;
  const actions = useMemo(() => {
    // Toasts lie over the status line: a new sentence there takes them away.
    const say = (words: string, step: number | null) => {
      if (words !== '') hushToast();
      setSaid({ words, step });
    };
    const stands = () => client.getQueryData<ShopCopy>(keys.shop)?.shop ?? shop;
    const carryOut = (commandOn: (now: Shop) => Command, words: string, wordsAgain: string) => {
      say(words, null);
      mutate(commandOn(stands()), {
        onSuccess: ({ stepId }) => say(words, stepId),
        onError: (error) => {
          onRefused();
          say(error.message, newest);
          const act = () => carryOut(commandOn, wordsAgain, wordsAgain);
          sayRefused(error, { label: 'Do it again', act });
        },
      });
    };
    return { stands, carryOut, tell: (words: string) => say(words, newest) };
  }, [shop, mutate, newest, client, onRefused]);
  const stale = said.step !== null && !standsLast(history, said.step);
  return { ...actions, said: stale ? '' : said.words };
}

/** Moving and pinning on the board: tried out first, then asked of the host. */
export function useMoves(shop: Shop, plan: PlanView, lanes: readonly Lane[]): Moves {
  const { timeZone } = shop.settings;
  const [tried, setTried] = useState<Tried | null>(null);
  const forget = useCallback(() => setTried(null), []);
  const { stands, carryOut, tell, said } = useCarryOut(shop, forget);

  const doing = useMemo((): BoardDoing => {
    const preview = (blocks: readonly Block[] | null): Tried | null => {
      const next = blocks && tryOut(shop, plan, lanes, blocks);
      const shown = typeof next === 'string' ? null : next;
      setTried(shown);
      tell(typeof next === 'string' ? next : (shown?.words ?? ''));
      return shown;
    };
    const move = (blocks: readonly Block[], whereNot = '') => {
      // A key may come again before the screen shows what it did last: it is of a plan that is gone.
      if (seenKey(stands()) !== seenKey(shop)) return;
      if (withBlocks(plan.queues, blocks) === plan.queues) {
        setTried(null);
        tell(whereNot);
        return;
      }
      const shown = preview(blocks);
      if (!shown) return;
      const again = `Moved ${moveWords(blocks, nameIn(shop))}`;
      carryOut((now) => moveOn(now, blocks), `Moved ${shown.words}`, again);
    };
    const dayEnd = (at: number) => addDays(startOfDay(instant(at), timeZone), 1, timeZone);
    return {
      able: (ids) => ableFor(plan, ids),
      whyNot: (ids, machineId) => whyNot(plan, shop, ids, machineId),
      refuse: (ids, machineId) => tell(whyNot(plan, shop, ids, machineId)),
      preview,
      move,
      postpone: (ids) => move(postponed(lanes, ids, dayEnd), NOWHERE),
      splitRun: (id) => move(pastRun(lanes, laterPart(lanes, id), 1), NOT_SPLIT),
      explain: (operation) => useBoardView.getState().show('why', operation),
      togglePin(ids) {
        if (ids.length === 0) return;
        const pinned = ids.every((id) => shop.pin.some((pin) => pin.id === id));
        const words = pinWords(ids, pinned);
        carryOut((now) => pinOn(now, ids, pinned), words, words);
      },
    };
  }, [shop, plan, lanes, timeZone, stands, carryOut, tell]);
  return { doing, wouldBe: tried?.on === plan ? tried.lanes : null, said };
}
