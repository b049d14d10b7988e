import { ChevronLeft, ChevronRight } from 'lucide-react';
import type { ReactNode } from 'react';
import { BigButton } from './big-button.tsx';
import styles from './floor.module.css';
import { Settled } from './settled.tsx';

interface Props {
  /** Names this step: while it changes nothing on it can be pressed. */
  id: string;
  shown: number;
  count: number;
  turn: (to: number) => void;
  /** "Back gauge" */
  how: string;
  figures: string;
  unit: string;
  /** What to know of the step, short sentences. */
  words: readonly ReactNode[];
  /** The step after it, "Back gauge 4 3/4 in"; null: it is the last one. */
  next: string | null;
  picture: ReactNode;
  /** What counts its cuts. */
  children?: ReactNode;
}

/** One step at a machine: the setting as large as can be, what to do, and the step after it. */
export const StepCard = ({
  id,
  shown,
  count,
  turn,
  how,
  figures,
  unit,
  words,
  next,
  picture,
  children,
}: Props) => (
  <section className={styles.stepCard} aria-label={`Step ${shown + 1} of ${count}`}>
    <div className={styles.setting}>
      <p className={styles.how}>{`Step ${shown + 1} of ${count}: ${how}`}</p>
      {figures !== '' && (
        <p className={styles.figures} data-far>
          {figures} <small>{unit}</small>
        </p>
      )}
      {words.map((text, n) => (
        <p key={n} className={styles.stepWords}>
          {text}
        </p>
      ))}
      <p className={styles.then}>{next === null ? 'The last step.' : `Then: ${next}`}</p>
    </div>
    <div className={styles.stepPicture}>{picture}</div>
    <Settled state={id}>
      <div className={styles.turns}>
        <BigButton icon={ChevronLeft} keys="←" isDisabled={shown === 0} onPress={() => turn(shown - 1)}>
          Step before
        </BigButton>
        {children}
        <BigButton
          icon={ChevronRight}
          keys="→"
          isDisabled={shown === count - 1}
          onPress={() => turn(shown + 1)}
        >
          Next step
        </BigButton>
      </div>
    </Settled>
  </section>
);
