import { ChartColumn } from 'lucide-react';
import { usePlan, yardstickOf, type PlanQuery } from '../../queries/plan.ts';
import { Page, Panel } from '../../ui/page.tsx';
import { Segments } from '../../ui/segments.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { storedChoice } from '../../ui/stored-choice.ts';
import { Compared } from './compared.tsx';
import { gainSentence } from './comparison.ts';
import { LoadChart } from './load-chart.tsx';
import { bases, machineLoads } from './load-days.ts';
import { LoadTable } from './load-table.tsx';
import { Totals } from './totals.tsx';

const weeks = storedChoice('foldweek.load.weeks', ['1', '2', '3', '4'], '2');
const basis = storedChoice('foldweek.load.basis', bases, 'planned');
const drawn = storedChoice('foldweek.load.drawn', ['chart', 'table'], 'chart');

/** Hours asked against hours open, and what the plan is worth. */
export function LoadScreen() {
  const query = usePlan();
  return (
    <Page title="Load" lead="Hours asked of each machine against the hours it is open." actions={<Tools />}>
      {query.is === 'waiting' && <Waiting doing="Working out the plan" />}
      {query.is === 'failed' && <SentenceError message={query.message} />}
      {query.is === 'ready' && <Load query={query} />}
    </Page>
  );
}

const Tools = () => (
  <>
    <Segments
      label="Show as"
      choices={[
        ['chart', 'Charts'],
        ['table', 'Tables'],
      ]}
      value={drawn.use()}
      onChange={drawn.write}
    />
    <Segments
      label="Work is counted"
      choices={[
        ['planned', 'When planned'],
        ['due', 'When due'],
      ]}
      value={basis.use()}
      onChange={basis.write}
    />
    <Segments
      label="Weeks shown"
      choices={weeks.choices.map((n) => [n, n === '1' ? '1 week' : `${n} weeks`] as const)}
      value={weeks.use()}
      onChange={weeks.write}
    />
  </>
);

function Load({ query: { shop, plan, now } }: { query: Extract<PlanQuery, { is: 'ready' }> }) {
  const days = 7 * Number(weeks.use());
  const counted = basis.use();
  const asTable = drawn.use() === 'table';
  const { timeZone } = shop.settings;
  if (shop.machine.length === 0)
    return (
      <EmptyState icon={ChartColumn} title="No machines yet">
        <p>
          Load is worked out for each machine. Add one in Shop, Machines; it needs a calendar from Shop,
          Calendars.
        </p>
      </EmptyState>
    );
  const yardstick = yardstickOf(shop, plan);
  const loads = machineLoads(shop, plan, now, days, counted);
  return (
    <>
      <Panel title={gainSentence(plan.figures, yardstick)}>
        <Compared plan={plan.figures} yardstick={yardstick} timeZone={timeZone} />
      </Panel>
      {loads.map((load) => (
        <Panel key={load.machine.id} title={`${load.machine.name} (${load.machine.id})`}>
          {asTable ? (
            <LoadTable load={load} timeZone={timeZone} />
          ) : (
            <LoadChart load={load} timeZone={timeZone} />
          )}
        </Panel>
      ))}
      <Panel title={days === 7 ? 'The week in all' : `The ${days / 7} weeks in all`}>
        <Totals loads={loads} />
      </Panel>
    </>
  );
}
