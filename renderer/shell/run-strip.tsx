import { Play, Square, X } from 'lucide-react';
import { useState } from 'react';
import type { SearchState } from '../../core/contract/search.ts';
import { formatDuration } from '../../core/units/duration.ts';
import { formatMoney } from '../../core/units/money.ts';
import { Button } from '../ui/button.tsx';
import { IconButton } from '../ui/icon-button.tsx';
import { KeyHint } from '../ui/key-hint.tsx';
import { FallingLine } from './convergence-curve.tsx';
import styles from './run-strip.module.css';
import { KEEP_GOING, type PlanRun } from './use-plan-run.ts';
import type { UndoRedo } from './use-undo-redo.ts';

/** What the run amounts to so far, or in the end, in a sentence. */
export function runSentence({
  phase,
  seconds,
  budgetSeconds,
  objective,
  startObjective,
  joins,
  message,
  protect,
}: SearchState): string {
  if (phase === 'failed') return message ?? 'The search failed; the plan is as it was. Try again.';
  const aim = protect === null ? '' : `, protecting ${Math.round(protect * 100)} %`;
  if (phase === 'running') return `Planning${aim}: ${Math.floor(seconds)} of ${Math.round(budgetSeconds)} s`;
  if (message) return message;
  const ended =
    phase === 'stopped'
      ? `Stopped after ${formatDuration(seconds)}`
      : `Planned in ${formatDuration(seconds)}${aim}`;
  if (objective === null || startObjective === null) return `${ended}.`;
  const gain = startObjective === 0 ? 0 : Math.round((1 - objective / startObjective) * 100);
  return gain <= 0
    ? `${ended}: no better plan was found; the plan is as it was.`
    : `${ended}: ${gain} % better than before.${joins ? ` ${joinedWords(joins)}` : ''}`;
}

/** Runs joined for the sake of the stock: what they save in money, and what that costs in the score of time. */
function joinedWords({ count, savedCents, objectiveAdded }: NonNullable<SearchState['joins']>): string {
  const runs =
    count === 1 ? 'Two runs of one metal were joined' : `Runs of one metal were joined ${count} times`;
  const time =
    Math.round(objectiveAdded) > 0
      ? `, for ${Math.round(objectiveAdded).toLocaleString('en')} more in the score of time`
      : '';
  return `${runs}: stock costs ${formatMoney(savedCents)} less${time}.`;
}

const Figure = ({ label, value }: { label: string; value: string }) => (
  <div className={styles.figure}>
    <dt>{label}</dt>
    <dd>{value}</dd>
  </div>
);

/** The search at work under the header: its falling objective and what it is made of; afterwards the outcome. */
export function RunStrip({ run, undoRedo }: { run: PlanRun; undoRedo: UndoRedo }) {
  const [closed, setClosed] = useState<string | null>(null);
  const { state } = run;
  if (!state || closed === state.jobId) return null;
  const { phase, terms, objective, seconds, budgetSeconds } = state;
  const done = phase !== 'running';

  return (
    <section className={styles.strip} aria-label="Search">
      {!done && (
        <div
          className={styles.bar}
          style={{ transform: `scaleX(${Math.min(1, seconds / budgetSeconds)})` }}
        />
      )}
      <p
        role={phase === 'failed' ? 'alert' : 'status'}
        className={styles.sentence}
        aria-live={done ? 'polite' : 'off'}
      >
        {runSentence(state)}
      </p>
      <FallingLine run={state} />
      <dl className={styles.figures}>
        {objective !== null && (
          <Figure label="Score, lower is better" value={Math.round(objective).toLocaleString('en')} />
        )}
        {terms && <Figure label="Weighted lateness" value={formatDuration(terms.weightedTardiness)} />}
        {terms && <Figure label="Changeover" value={formatDuration(terms.changeover)} />}
        <Figure label="Plans tried" value={state.evaluations.toLocaleString('en')} />
      </dl>
      {phase === 'failed' && (
        <Button small onPress={run.start}>
          Try again
        </Button>
      )}
      {phase !== 'running' && phase !== 'failed' && (
        <Button small look="primary" icon={Play} onPress={run.start}>
          Keep going <KeyHint keys={KEEP_GOING} />
        </Button>
      )}
      {phase === 'running' && (
        <Button small icon={Square} onPress={run.stop}>
          Stop <KeyHint keys="P" />
        </Button>
      )}
      {/* Only while it takes back this run's plan, never another step. */}
      {done && state.stepId !== null && state.stepId === undoRedo.undoStepId && (
        <Button small onPress={undoRedo.undo}>
          Undo
        </Button>
      )}
      {done && <IconButton small label="Close" icon={X} onPress={() => setClosed(state.jobId)} />}
    </section>
  );
}
