import { useMemo, type ReactNode } from 'react';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import { viewQueues } from '../../../core/planning/plan-view.ts';
import { movedIn } from '../../../core/schedule/repair/moved.ts';
import type { Queues } from '../../../core/schedule/problem.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Interval } from '../../../core/time/interval.ts';
import { lanesOf, type Lane } from '../../gantt/lanes.ts';
import { MiniPlan } from '../../gantt/mini-plan.tsx';
import { classes } from '../../ui/classes.ts';
import { KeyHint } from '../../ui/key-hint.tsx';
import styles from './what-if.module.css';

/** A plan that could be taken: its lanes, and what stands elsewhere in it. */
interface Sketch {
  readonly lanes: readonly Lane[];
  readonly moved: ReadonlySet<string>;
}

/** The plan as it would be with these queues; null where they cannot be timed any more. */
function sketchOf(shop: Shop, plan: PlanView, queues: Queues): Sketch | null {
  const view = viewQueues(shop, plan, queues);
  if (!view.ok) return null;
  return { lanes: lanesOf(shop, view.value), moved: new Set(movedIn(plan.problem, plan.queues, queues)) };
}

interface Props {
  /** Its key, "1". */
  keys: string;
  title: string;
  how: string;
  /** The one that costs least. */
  least: boolean;
  picture: ReactNode;
  /** What is still to be said of it; null: nothing. */
  note: string | null;
  /** The button that takes it. */
  action: ReactNode;
  children: ReactNode;
}

/** One of several plans side by side. */
export const PlanCard = ({ keys, title, how, least, picture, note, action, children }: Props) => (
  <section className={classes(styles.card, least && styles.least)} aria-label={title}>
    <header className={styles.cardHead}>
      <h3>{title}</h3>
      <KeyHint keys={keys} />
    </header>
    <p className={styles.soft}>{how}</p>
    <div className={styles.picture}>{picture}</div>
    <div className={styles.words}>
      {children}
      {note && (
        <p className={styles.soft} role="status">
          {note}
        </p>
      )}
    </div>
    <div className={styles.take}>{action}</div>
  </section>
);

interface PictureProps {
  shop: Shop;
  plan: PlanView;
  /** null: not found yet. */
  queues: Queues | null;
  window: Interval;
  lineIds: readonly string[];
  label: string;
}

/** The picture of a card: the plan with these queues. */
export function Picture({ shop, plan, queues, ...rest }: PictureProps) {
  const sketch = useMemo(() => queues && sketchOf(shop, plan, queues), [shop, plan, queues]);
  return sketch && <MiniPlan {...sketch} timeZone={shop.settings.timeZone} {...rest} />;
}
