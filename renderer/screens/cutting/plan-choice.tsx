import { useShop } from '../../queries/hooks.ts';
import { useUnpublished } from '../../queries/plans.ts';
import { Panel } from '../../ui/page.tsx';
import { Segments } from '../../ui/segments.tsx';
import { storedChoice } from '../../ui/stored-choice.ts';
import styles from './cutting.module.css';

/** Whose runs the screen shows: of the only plan there is, where every change is published at once; else of one of two. */
export type PlanShown = 'only' | 'published' | 'draft';

/** Sheets are issued, and lists changed, saved and printed, for what the floor cuts; a draft is looked at. */
export const isCut = (shown: PlanShown): boolean => shown !== 'draft';
/** The order of runs is the draft's to change. */
export const isOrdered = (shown: PlanShown): boolean => shown !== 'published';

const chosen = storedChoice<'published' | 'draft'>(
  'foldweek.cutting.plan',
  ['published', 'draft'],
  'published',
);

/** The plan to show: what the floor follows, unless the draft was asked for. */
export function usePlanShown(): PlanShown {
  const { data: shop } = useShop();
  const wanted = chosen.use();
  return shop?.settings.publishing === 'byHand' ? wanted : 'only';
}

/** Where plans are published by hand: which of the two is shown, and what that means. */
export function PlanChoice({ shown }: { shown: PlanShown }) {
  const { data: shop } = useShop();
  const changes = useUnpublished();
  if (shown === 'only') return null;
  const differs = shop?.machine.some(({ id, stage }) => stage === 'shear' && changes.has(id)) ?? false;
  return (
    <Panel>
      <div className={styles.planChoice}>
        <Segments
          label="Runs of"
          choices={[
            ['published', 'The published plan'],
            ['draft', 'The draft'],
          ]}
          value={shown}
          onChange={chosen.write}
        />
        <p role="status">{WORDS[shown](differs)}</p>
      </div>
    </Panel>
  );
}

const WORDS: Readonly<Record<Exclude<PlanShown, 'only'>, (differs: boolean) => string>> = {
  published: (differs) =>
    differs
      ? 'What the floor and the printed lists follow. The draft on the board has another queue for the shear.'
      : 'What the floor and the printed lists follow. The shear’s queue on the board is the same.',
  draft: () =>
    'What is on the board, to look at. Sheets are issued, and steps changed, saved and printed, in the published plan.',
};
