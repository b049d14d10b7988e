import { useEffect, useMemo } from 'react';
import { metalMissing, type MetalMissing } from '../../../core/planning/metal-missing.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Instant } from '../../../core/units/brand.ts';
import type { BoardReading } from '../../gantt/board-reading.ts';
import type { BoardDoing } from '../../gantt/doing.ts';
import type { Bar, Lane } from '../../gantt/lanes.ts';
import { useBoardView } from '../../gantt/view.ts';
import { toast } from '../../ui/toast.tsx';
import { BarCard } from './bar-card.tsx';
import { barsThatFit, useBoardFilter } from './board-filter.ts';
import { barMenu } from './bar-menu.ts';
import { chosenOf } from './chosen.ts';
import type { Looks } from './use-looks.ts';

interface Board {
  shop: Shop;
  plan: PlanView;
  lanes: readonly Lane[];
  doing: BoardDoing;
  now: Instant;
}

/** The bars that the filter lets through; null: no filter. */
export function useFit({ lanes, shop, now }: Omit<Board, 'doing' | 'plan'>): readonly Bar[] | null {
  const filter = useBoardFilter((view) => view.filter);
  return useMemo(
    () => barsThatFit(lanes, filter, now, shop.settings.timeZone),
    [lanes, filter, now, shop.settings.timeZone],
  );
}

/** The lines whose metal is not there. */
export const useMetalMissing = ({ shop, plan, now }: Pick<Board, 'shop' | 'plan' | 'now'>) =>
  useMemo(() => metalMissing(shop, plan, now), [shop, plan, now]);

/** What the board shows beside its bars. */
export function useReading(
  board: Board,
  looks: Looks,
  fit: readonly Bar[] | null,
  missing: readonly MetalMissing[],
): BoardReading {
  const { shop, plan, lanes, doing, now } = board;
  const fits = useMemo(() => fit && new Set(fit.map((bar) => bar.operation)), [fit]);
  const lacking = useMemo(() => new Map(missing.map(({ operation, is }) => [operation.id, is])), [missing]);
  return {
    ...{ fits, lacking, fold: looks.fold, published: looks.published },
    card(operation) {
      const chosen = chosenOf(shop, plan, lanes, operation);
      const lacks = missing.find((one) => one.operation.id === operation);
      return chosen && <BarCard chosen={chosen} lacks={lacks} now={now} />;
    },
    menu: (operation) => barMenu(lanes, doing, operation),
  };
}

/** A line that another screen asked for is selected at its first step, or it is said that it stands in no queue. */
export function useSought(lanes: readonly Lane[]): void {
  const sought = useBoardView((view) => view.sought);
  useEffect(() => {
    if (sought === null) return;
    const { select, seek } = useBoardView.getState();
    const bars = lanes.flatMap((lane) => lane.bars).filter((bar) => bar.lineId === sought);
    const first = bars.sort((a, b) => a.start - b.start)[0];
    if (first) select(first.operation);
    else
      toast({
        text: `${sought} is not on the board: nothing of it is left to do, it is held, or it cannot be planned.`,
      });
    seek(null);
  }, [sought, lanes]);
}
