import { onTimePercent, type PlanFigures } from '../../../core/planning/figures.ts';
import { formatDayAndClock } from '../../../core/time/wall.ts';
import { counted } from '../../../core/units/count.ts';
import { formatDuration, formatHours } from '../../../core/units/duration.ts';
import { Button } from '../../ui/button.tsx';
import { classes } from '../../ui/classes.ts';
import styles from './board.module.css';

interface Props {
  figures: PlanFigures;
  /** The same in plain due-date order; null when it cannot be told. */
  yardstick: PlanFigures | null;
  timeZone: string;
  /** How many lines have such a chance on time; null while too little work is finished. */
  linesOnTime: LinesOnTime | null;
  /** Show what is missing for the lines that cannot be planned. */
  onLeftOut: () => void;
}

export interface LinesOnTime {
  readonly confidence: number;
  readonly confident: number;
  readonly lines: number;
}

interface Figure {
  readonly label: string;
  readonly show: (figures: PlanFigures) => string;
  /** The yardstick's, where that is said in fewer words. */
  readonly beside?: (figures: PlanFigures) => string;
  /** What is compared; smaller is better. */
  readonly cost: (figures: PlanFigures) => number;
  /** Follows from another figure and may be left out where room is short. */
  readonly derived?: true;
}

const figuresIn = (timeZone: string): readonly Figure[] => [
  {
    label: 'Late lines',
    show: (f) => `${f.lateLines} of ${f.lines + f.leftOut}`,
    beside: (f) => String(f.lateLines),
    cost: (f) => f.lateLines,
  },
  {
    label: 'Lines on time',
    show: (f) => onTimePercent(f.onTimeShare),
    cost: (f) => -f.onTimeShare,
    derived: true,
  },
  { label: 'Hours late', show: (f) => formatHours(f.tardiness), cost: (f) => f.tardiness },
  { label: 'Changeover', show: (f) => formatDuration(f.changeoverSeconds), cost: (f) => f.changeoverSeconds },
  {
    label: 'All done',
    show: (f) => (f.lastEnd === null ? '–' : formatDayAndClock(f.lastEnd, timeZone)),
    cost: (f) => f.lastEnd ?? 0,
  },
];

interface Verdict {
  readonly look: string | undefined;
  readonly sign: string;
  readonly words: string;
}

/** How a figure stands beside the yardstick's, by the sign of what it gains. */
const verdicts: Readonly<Record<number, Verdict>> & { readonly 0: Verdict } = {
  [1]: { look: styles.better, sign: '✓', words: 'Better than' },
  [0]: { look: undefined, sign: '=', words: 'The same as' },
  [-1]: { look: styles.worse, sign: '◆', words: 'Worse than' },
};

/** The plan in numbers, each beside what plain due-date order would give; last, how many lines have a good chance. */
export const FiguresStrip = ({ figures, yardstick, timeZone, linesOnTime, onLeftOut }: Props) => (
  <dl className={styles.figures}>
    {figuresIn(timeZone).map(({ label, show, beside, cost, derived }) => {
      const gain = yardstick && Math.sign(cost(yardstick) - cost(figures));
      const { look, sign, words } = verdicts[gain ?? 0] ?? verdicts[0];
      return (
        <div key={label} className={classes(styles.figure, derived && styles.derived)}>
          <dt>{label}</dt>
          <dd className={styles.value}>{show(figures)}</dd>
          {yardstick && (
            <dd className={classes(styles.beside, look)} title={`${words} plain due-date order`}>
              {sign} due-date order: {(beside ?? show)(yardstick)}
            </dd>
          )}
        </div>
      );
    })}
    {figures.leftOut > 0 && (
      <div className={styles.figure}>
        <dt>Cannot be planned</dt>
        <dd className={styles.value}>{`▲ ${counted(figures.leftOut, 'line')}`}</dd>
        <dd className={styles.beside}>
          <Button small look="quiet" onPress={onLeftOut}>
            See what is missing
          </Button>
        </dd>
      </div>
    )}
    {linesOnTime && (
      // Where room is short, what is left out is said rather than how sure the rest is.
      <div className={classes(styles.figure, figures.leftOut > 0 && styles.derived)}>
        <dt>Chance on time</dt>
        <dd
          className={styles.value}
        >{`${linesOnTime.confident} of ${linesOnTime.lines + figures.leftOut}`}</dd>
        <dd className={styles.beside}>{`have ${Math.round(linesOnTime.confidence * 100)} % or more`}</dd>
      </div>
    )}
  </dl>
);
