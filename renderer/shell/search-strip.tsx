import { Play, Square, X } from 'lucide-react';
import { useState } from 'react';
import type { SearchState } from '../../core/contract/search.ts';
import { aimWords, gainWords } from '../../core/report/search-words.ts';
import { formatDuration } from '../../core/units/duration.ts';
import { formatMoney, type MoneyStyle } from '../../core/units/money.ts';
import { Button } from '../ui/button.tsx';
import { IconButton } from '../ui/icon-button.tsx';
import { KeyHint } from '../ui/key-hint.tsx';
import { ConvergenceCurve } from './convergence-curve.tsx';
import styles from './search-strip.module.css';
import { KEEP_SEARCHING, type PlanJob } from './use-plan-job.ts';
import type { UndoRedo } from './use-undo-redo.ts';

/** What the search amounts to so far, or in the end, in a sentence. */
export function searchSentence(state: SearchState, money: MoneyStyle): string {
  const { phase, seconds, budgetSeconds, message, protect, gist, startGist } = state;
  if (phase === 'failed') return message ?? 'The search failed; the plan is as it was. Try again.';
  const aim = protect === null ? '' : `, ${aimWords(protect)}`;
  const gain = gainWords(startGist, gist);
  if (phase === 'running')
    return `Planning${aim}: ${Math.floor(seconds)} of ${Math.round(budgetSeconds)} s${gain && `, so far ${gain}`}.`;
  if (message) return message;
  const ended =
    phase === 'stopped'
      ? `Stopped after ${formatDuration(seconds)}`
      : `Planned in ${formatDuration(seconds)}${aim}`;
  return `${ended}: ${gain || sameWords(state)}.${joinedWords(state, money)}`;
}

/** Where no line, no hour late and no changeover differs. */
const sameWords = ({ objective, startObjective }: SearchState): string =>
  (objective ?? 0) < (startObjective ?? 0)
    ? 'as late as before, with as much changeover; better in the rest of what matters most to you'
    : 'no better plan was found';

/** Runs joined for the sake of the stock; what that costs in time is in the figures before it. */
function joinedWords({ joins }: SearchState, money: MoneyStyle): string {
  if (joins === null) return '';
  const { count, savedCents } = joins;
  const runs =
    count === 1 ? 'Two runs of one metal were joined' : `Runs of one metal were joined ${count} times`;
  return ` ${runs}: stock costs ${formatMoney(savedCents, money)} less.`;
}

interface Props {
  job: PlanJob;
  undoRedo: UndoRedo;
  money: MoneyStyle;
}

/** The search at work under the header: what it gained so far; afterwards the outcome, as long as its plan is the last thing done. */
export function SearchStrip({ job, undoRedo, money }: Props) {
  const [closed, setClosed] = useState<string | null>(null);
  const { state } = job;
  if (!state || closed === state.jobId) return null;
  const { phase, seconds, budgetSeconds, stepId } = state;
  const done = phase !== 'running';
  if (done && stepId !== null && !undoRedo.standsLast(stepId)) return null;

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
        {searchSentence(state, money)}
      </p>
      <ConvergenceCurve search={state} />
      {phase === 'failed' && (
        <Button small onPress={job.start}>
          Try again
        </Button>
      )}
      {phase !== 'running' && phase !== 'failed' && (
        <Button small look="primary" icon={Play} onPress={job.start}>
          Keep searching <KeyHint keys={KEEP_SEARCHING} />
        </Button>
      )}
      {phase === 'running' && (
        <Button small icon={Square} onPress={job.stop}>
          Stop <KeyHint keys="P" />
        </Button>
      )}
      {/* Only while it takes back the plan of this search, never another step. */}
      {done && stepId !== null && stepId === undoRedo.undoStepId && (
        <Button small onPress={undoRedo.undo}>
          Undo
        </Button>
      )}
      {done && <IconButton small label="Close" icon={X} onPress={() => setClosed(state.jobId)} />}
    </section>
  );
}
