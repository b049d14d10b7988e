import type { SearchState } from '../../core/contract/search.ts';
import styles from './search-strip.module.css';

const WIDTH = 160;
const HEIGHT = 32;

type Progress = Pick<SearchState, 'curve' | 'seconds' | 'budgetSeconds'>;

/**
 * The objective against time as an SVG path, up to the present second; '' before the second point. It is a staircase:
 * a plan holds until a better one comes.
 */
export function curvePath(
  { curve, seconds, budgetSeconds }: Progress,
  width: number,
  height: number,
): string {
  const [first] = curve;
  if (!first || curve.length < 2) return '';
  const low = Math.min(...curve.map((point) => point.objective));
  const high = Math.max(...curve.map((point) => point.objective));
  const x = (at: number) => ((Math.min(at, budgetSeconds) / budgetSeconds) * width).toFixed(1);
  const y = (objective: number) =>
    (high === low ? height / 2 : ((high - objective) / (high - low)) * height).toFixed(1);
  const stairs = curve.slice(1).map((point) => `H${x(point.seconds)}V${y(point.objective)}`);
  return `M${x(first.seconds)} ${y(first.objective)}${stairs.join('')}H${x(seconds)}`;
}

export const ConvergenceCurve = ({ search }: { search: Progress }) => (
  <svg
    className={styles.line}
    width={WIDTH}
    height={HEIGHT}
    viewBox={`0 -2 ${WIDTH} ${HEIGHT + 4}`}
    role="img"
    aria-label="Lateness and changeovers weighed together, falling"
  >
    <path d={`M0 ${HEIGHT}H${WIDTH}`} className={styles.lineFoot} />
    <path d={curvePath(search, WIDTH, HEIGHT)} className={styles.linePath} />
  </svg>
);
