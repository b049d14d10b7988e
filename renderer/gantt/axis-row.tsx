import { shortDuration } from '../../core/units/duration.ts';
import { axisOf } from './axis.ts';
import { breaksIn, type Fold } from './fold.ts';
import styles from './gantt.module.css';
import { BOLD_CHARACTER_PX, CHARACTER_PX } from './labels.ts';
import reading from './reading.module.css';
import { xOf, type Scale } from './scale.ts';

export const AXIS_PX = 46;
const UPPER_PX = 22;

interface Props {
  scale: Scale;
  timeZone: string;
  /** In board seconds. */
  now: number;
  fold: Fold;
}

/** Days above, times of day below, at the shop's wall clock. */
export function AxisRow({ scale, timeZone, now, fold }: Props) {
  const { upper, lower } = axisOf(scale, timeZone, fold);
  const nowX = xOf(scale, now);
  return (
    <svg className={styles.axis} width={scale.width} height={AXIS_PX} aria-hidden>
      {upper.map(({ at, label }, i) => {
        const x = xOf(scale, at);
        const next = upper[i + 1] ? xOf(scale, upper[i + 1]!.at) : Infinity;
        const fits = next - Math.max(0, x) > label.length * BOLD_CHARACTER_PX + 8;
        return (
          <g key={at}>
            <path className={styles.tick} d={`M${x} 0V${AXIS_PX}`} />
            {fits && (
              <text className={styles.upper} x={Math.max(0, x) + 6} y={16}>
                {label}
              </text>
            )}
          </g>
        );
      })}
      {lower.map(({ at, label }) => (
        <g key={at}>
          <path className={styles.tick} d={`M${xOf(scale, at)} ${UPPER_PX + 16}v8`} />
          {xOf(scale, at) + 4 + label.length * CHARACTER_PX <= scale.width && (
            <text className={styles.lower} x={xOf(scale, at) + 4} y={UPPER_PX + 14}>
              {label}
            </text>
          )}
        </g>
      ))}
      {breaksIn(fold, scale).map(({ at, seconds }) => (
        <path key={at} className={reading.breakFlag} d={`M${xOf(scale, at) - 3} ${AXIS_PX}l-3 -8m6 8l-3 -8`}>
          <title>{`${shortDuration(seconds)} closed, folded away`}</title>
        </path>
      ))}
      {nowX >= 0 && nowX <= scale.width && (
        <path className={styles.nowFlag} d={`M${nowX} ${AXIS_PX}l-6 -9h12z`} />
      )}
    </svg>
  );
}
