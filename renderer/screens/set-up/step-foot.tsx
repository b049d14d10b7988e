import { ArrowRight } from 'lucide-react';
import { SET_UP_STEPS, type SetUpStep } from '../../../core/report/missing.ts';
import { Button } from '../../ui/button.tsx';
import styles from './set-up.module.css';
import { goToStep, stepName } from './steps.ts';

interface Props {
  step: SetUpStep;
  /** What is done on going on, "Keep 4 gauges"; null: nothing is to be saved. */
  does: string | null;
  onGoOn: () => void;
  /** Leave it for later, nothing saved; missing where there is nothing to leave. */
  onSkip?: (() => void) | undefined;
}

/** The way on, back, and past a step. */
export function StepFoot({ step, does, onGoOn, onSkip }: Props) {
  const at = SET_UP_STEPS.indexOf(step);
  const [before, next] = [SET_UP_STEPS[at - 1], SET_UP_STEPS[at + 1]];
  const on = next ? `Next: ${stepName[next].toLowerCase()}` : 'Done';
  return (
    <footer className={styles.foot}>
      {before && <Button onPress={() => goToStep(before)}>Back</Button>}
      {onSkip && <Button onPress={onSkip}>Leave it for later</Button>}
      <span className={styles.push}>
        <Button look="primary" icon={ArrowRight} onPress={onGoOn}>
          {does ? `${does}, and go on` : on}
        </Button>
      </span>
    </footer>
  );
}
