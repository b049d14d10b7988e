import { useMemo } from 'react';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import { HOUR } from '../../../core/units/duration.ts';
import { instant, type Instant } from '../../../core/units/brand.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { flat, foldInterval, foldLanes, foldOf, shutTogether, type Fold } from '../../gantt/fold.ts';
import { horizonOf, lanesOf, type Lane } from '../../gantt/lanes.ts';
import { useFollowedPlan } from '../../queries/plan.ts';
import { keyName, keysAreTaken } from '../../ui/key-name.ts';
import { storedChoice } from '../../ui/stored-choice.ts';
import { useKeyPresses } from '../../ui/use-key-presses.ts';

const closedHours = storedChoice('foldweek.board.closed', ['shown', 'folded'], 'shown');
const publishedPlan = storedChoice('foldweek.board.published', ['hidden', 'beside'], 'hidden');

/** A way to draw the board, switched on or off. */
interface Look {
  readonly id: string;
  readonly label: string;
  readonly keys: string;
  readonly on: boolean;
  /** Why it cannot be switched on, a sentence; null: it can. */
  readonly why: string | null;
  readonly flip: () => void;
}

export interface Looks {
  readonly all: readonly Look[];
  readonly fold: Fold;
  /** Lanes of the published plan, in board seconds; null: not shown. */
  readonly published: readonly Lane[] | null;
}

/** How the board is drawn: closed hours folded away, the published plan beside the draft. Kept in this window. */
export function useLooks(shop: Shop, plan: PlanView, lanes: readonly Lane[]): Looks {
  const folds = closedHours.use() === 'folded';
  const beside = publishedPlan.use() === 'beside';
  const byHand = shop.settings.publishing === 'byHand';
  const possible = useMemo(() => foldOf(shutTogether(plan, lanes, horizonOf(plan))), [plan, lanes]);
  const fold = folds ? possible : flat;
  const published = usePublishedLanes(byHand && beside, fold);
  const closed: Look = {
    id: 'closed',
    label: 'Fold closed hours',
    keys: 'C',
    on: fold !== flat,
    why: possible === flat ? 'At every hour some machine is open' : null,
    flip: () => closedHours.write(folds ? 'shown' : 'folded'),
  };
  const publishedLook: Look = {
    id: 'published',
    label: 'Published plan',
    keys: 'V',
    on: beside,
    why: null,
    flip: () => publishedPlan.write(beside ? 'hidden' : 'beside'),
  };
  const all = byHand ? [closed, publishedLook] : [closed];
  useKeyPresses((event) => {
    const look = keysAreTaken(event) ? undefined : all.find(({ keys }) => keys === keyName(event));
    if (!look || look.why !== null) return;
    event.preventDefault();
    look.flip();
  });
  return { all, fold, published };
}

function usePublishedLanes(wanted: boolean, fold: Fold): readonly Lane[] | null {
  const query = useFollowedPlan();
  const ready = wanted && query.is === 'ready' ? query : null;
  const [shop, plan] = [ready?.shop, ready?.plan];
  return useMemo(() => (shop && plan ? foldLanes(lanesOf(shop, plan), fold) : null), [shop, plan, fold]);
}

interface Planned {
  plan: PlanView;
  lanes: readonly Lane[];
  wouldBe: readonly Lane[] | null;
  now: Instant;
}

/** What the board draws, in board seconds. */
export function useDrawn({ plan, lanes, wouldBe, now }: Planned, fold: Fold) {
  const horizon = useMemo(() => foldInterval(fold, horizonOf(plan)), [plan, fold]);
  const whole = { start: now, end: Math.max(plan.figures.lastEnd ?? now, now) + HOUR };
  return {
    lanes: useMemo(() => foldLanes(lanes, fold), [lanes, fold]),
    wouldBe: useMemo(() => wouldBe && foldLanes(wouldBe, fold), [wouldBe, fold]),
    horizon,
    whole: foldInterval(fold, whole),
    now: fold.at(now),
    opens: fold.at(nextOpen(plan, now)),
  };
}

/** The next moment at which a machine of the plan is open: now, where one is. */
function nextOpen({ problem }: PlanView, now: Instant): Instant {
  const starts = problem.input.machines.flatMap(({ open }) => {
    const next = open ? open.find(({ end }) => end > now) : { start: now };
    return next ? [Math.max(next.start, now)] : [];
  });
  return starts.length > 0 ? instant(Math.min(...starts)) : now;
}
