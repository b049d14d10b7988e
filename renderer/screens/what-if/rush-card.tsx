import type { RushWay } from '../../../core/planning/answers.ts';
import type { PlanView } from '../../../core/planning/plan-view.ts';
import type { WayWords } from '../../../core/report/rush-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import type { Interval } from '../../../core/time/interval.ts';
import { Button } from '../../ui/button.tsx';
import { Tag } from '../../ui/tag.tsx';
import { Picture, PlanCard } from './plan-card.tsx';
import styles from './what-if.module.css';

interface Props {
  shop: Shop;
  plan: PlanView;
  lineIds: readonly string[];
  window: Interval;
  keys: string;
  about: { readonly title: string; readonly how: string };
  /** null: not found yet. */
  way: RushWay | null;
  words: (way: RushWay) => WayWords;
  advised: boolean;
  /** Costs least of all. */
  least: boolean;
  note: string | null;
  take: (way: RushWay) => void;
}

/** One way to take the rush in. */
export function RushCard(props: Props) {
  const { shop, plan, lineIds, window, keys, about, way, words, advised, least, note, take } = props;
  const said = way && words(way);
  return (
    <PlanCard
      keys={keys}
      {...about}
      least={advised}
      picture={
        <Picture
          shop={shop}
          plan={plan}
          queues={way?.queues ?? null}
          window={window}
          lineIds={lineIds}
          label={`Queues with ${about.title.toLowerCase()}. ${said?.ready ?? ''}, ${said?.timely ?? ''}.`}
        />
      }
      note={note}
      action={
        <Button look={advised ? 'primary' : 'usual'} isDisabled={!way} onPress={() => way && take(way)}>
          Use this option
        </Button>
      }
    >
      {said && <Words said={said} advised={advised} least={least} />}
    </PlanCard>
  );
}

const Words = ({ said, advised, least }: { said: WayWords; advised: boolean; least: boolean }) => (
  <>
    <p className={styles.ready}>
      <b>{said.ready}</b>
      <Tag look={said.onTime ? 'fine' : 'late'}>{said.timely}</Tag>
      {advised && <Tag look="accent">advised</Tag>}
    </p>
    {said.rushOthers && (
      <p>
        <strong>{said.rushOthers}</strong>
      </p>
    )}
    <p>{said.others}</p>
    <AllLate said={said} />
    {said.delayed && <p className={styles.soft}>{said.delayed}</p>}
    <p>{said.changeovers}</p>
    <p>
      {said.cost} {least && <Tag look="accent">costs least</Tag>}
    </p>
  </>
);

/** Everyone who becomes late, with the customer: unfolded where someone must be called. */
const AllLate = ({ said: { allLate } }: { said: WayWords }) =>
  allLate.length > 0 && (
    <details className={styles.allLate}>
      <summary>{`Who becomes late, with customers (${allLate.length})`}</summary>
      <ul>
        {allLate.map(({ lineId, words, customer }) => (
          <li key={lineId}>
            {words} <span className={styles.soft}>{customer}</span>
          </li>
        ))}
      </ul>
    </details>
  );
