import type { ShearStep } from '../../../core/report/shear-steps.ts';
import { formatCutSize, type Units } from '../../../core/units/length.ts';
import { counted } from '../../../core/units/count.ts';
import styles from './steps.module.css';

/** Room beside the sheet for its outline, as a share of its length. */
const EDGE = 0.01;

/** The sheet that a step is cut from, to scale: the pieces fed, and what the cuts take off them. */
export function CutPicture({ step: { group, places, number }, units }: { step: ShearStep; units: Units }) {
  if (!group) return null;
  const { lengthMm, widthMm } = group;
  const edge = lengthMm * EDGE;
  const size = formatCutSize(widthMm, lengthMm, units);
  return (
    <figure className={styles.picture}>
      <svg
        viewBox={[-edge, -edge, lengthMm + 2 * edge, widthMm + 2 * edge].join(' ')}
        role="img"
        aria-label={`Sheet ${group.id}, ${size}: ${counted(places.cuts.length, 'cut')} of step ${number} marked`}
        strokeWidth={edge / 2}
      >
        <rect width={lengthMm} height={widthMm} className={styles.sheet} />
        {group.blanks.map(({ x, y, w, h }) => (
          <rect key={`b${x} ${y}`} x={x} y={y} width={w} height={h} className={styles.blank} />
        ))}
        {places.fed.map(({ x, y, w, h }) => (
          <rect
            key={`f${x} ${y}`}
            x={x}
            y={y}
            width={w}
            height={h}
            className={styles.fed}
            strokeWidth={edge}
          />
        ))}
        {places.cuts.map(({ x, y, w, h }) => (
          <rect
            key={`c${x} ${y}`}
            x={x}
            y={y}
            width={w}
            height={h}
            className={styles.cut}
            strokeWidth={edge}
          />
        ))}
      </svg>
      <figcaption>{`Sheet ${group.id}, ${size}, ${counted(group.count, 'sheet')}`}</figcaption>
    </figure>
  );
}
