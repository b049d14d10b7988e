import type { SearchState } from '../../core/contract/search.ts';
import styles from './run-strip.module.css';

const WIDTH = 160;
const HEIGHT = 32;

/** Points of the objective against time as an SVG path; '' for fewer than two. The line is a staircase: a plan holds until a better one comes. */
export function fallingPath(
  curve: SearchState['curve'],
  budgetSeconds: number,
  width: number,
  height: number,
): string {
  const [first] = curve;
  if (!first || curve.length < 2) return '';
  const low = Math.min(...curve.map((point) => point.objective));
  const high = Math.max(...curve.map((point) => point.objective));
  const x = (seconds: number) => ((seconds / budgetSeconds) * width).toFixed(1);
  const y = (objective: number) =>
    (high === low ? height / 2 : ((high - objective) / (high - low)) * height).toFixed(1);
  return curve
    .map((point, i) =>
      i === 0 ? `M${x(point.seconds)} ${y(point.objective)}` : `H${x(point.seconds)}V${y(point.objective)}`,
    )
    .join('');
}

export const FallingLine = ({
  curve,
  budgetSeconds,
}: {
  curve: SearchState['curve'];
  budgetSeconds: number;
}) => (
  <svg
    className={styles.line}
    width={WIDTH}
    height={HEIGHT}
    viewBox={`0 -2 ${WIDTH} ${HEIGHT + 4}`}
    role="img"
    aria-label="Objective, falling"
  >
    <path d={`M0 ${HEIGHT}H${WIDTH}`} className={styles.lineFoot} />
    <path d={fallingPath(curve, budgetSeconds, WIDTH, HEIGHT)} className={styles.linePath} />
  </svg>
);
