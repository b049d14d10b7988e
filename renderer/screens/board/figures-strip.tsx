import type { PlanFigures } from '../../../core/report/figures.ts';
import { formatWall, formatWallDate } from '../../../core/time/wall.ts';
import { instant } from '../../../core/units/brand.ts';
import { formatDuration } from '../../../core/units/duration.ts';
import { shortDuration } from '../../gantt/labels.ts';
import { classes } from '../../ui/classes.ts';
import styles from './board.module.css';

interface Props {
  figures: PlanFigures;
  /** The same in plain due-date order; null when it cannot be told. */
  yardstick: PlanFigures | null;
  timeZone: string;
}

interface Figure {
  readonly label: string;
  readonly show: (figures: PlanFigures) => string;
  /** What is compared; smaller is better. */
  readonly cost: (figures: PlanFigures) => number;
}

const figuresIn = (timeZone: string): readonly Figure[] => [
  { label: 'Late lines', show: (f) => `${f.lateLines} of ${f.lines}`, cost: (f) => f.lateLines },
  { label: 'On time', show: (f) => `${Math.floor(f.onTimeShare * 100)} %`, cost: (f) => -f.onTimeShare },
  { label: 'Hours late', show: (f) => shortHours(f.tardiness), cost: (f) => f.tardiness },
  { label: 'Changeover', show: (f) => formatDuration(f.changeoverSeconds), cost: (f) => f.changeoverSeconds },
  {
    label: 'All done',
    show: (f) =>
      f.lastEnd === null
        ? '–'
        : `${formatWallDate(instant(f.lastEnd), timeZone)} ${formatWall(instant(f.lastEnd), timeZone).slice(4)}`,
    cost: (f) => f.lastEnd ?? 0,
  },
];

const shortHours = (seconds: number): string =>
  seconds >= 36_000 ? `${Math.round(seconds / 3600).toLocaleString('en')} h` : shortDuration(seconds);

/** The plan in five numbers, each beside what plain due-date order would give. */
export const FiguresStrip = ({ figures, yardstick, timeZone }: Props) => (
  <dl className={styles.figures}>
    {figuresIn(timeZone).map(({ label, show, cost }) => {
      const gain = yardstick && Math.sign(cost(yardstick) - cost(figures));
      const look = gain === 1 ? styles.better : gain === -1 ? styles.worse : undefined;
      const sign = gain === 1 ? '▼ ' : gain === -1 ? '▲ ' : '';
      return (
        <div key={label} className={styles.figure}>
          <dt>{label}</dt>
          <dd className={styles.value}>{show(figures)}</dd>
          {yardstick && (
            <dd
              className={classes(styles.beside, look)}
              title={
                gain === 1
                  ? 'better than due-date order'
                  : gain === -1
                    ? 'worse than due-date order'
                    : 'same as due-date order'
              }
            >
              {sign}by due date {show(yardstick)}
            </dd>
          )}
        </div>
      );
    })}
  </dl>
);
