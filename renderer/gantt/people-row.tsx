import type { Absence } from '../../core/shop/machine.ts';
import { formatWall } from '../../core/time/wall.ts';
import { instant } from '../../core/units/brand.ts';
import type { Fold } from './fold.ts';
import styles from './gantt.module.css';
import { endOf, xOf, type Scale } from './scale.ts';
import { counted } from '../../core/units/count.ts';

export const PEOPLE_PX = 20;
const BAND = { y: 2, height: 16 };
/** About what a letter of the words takes. */
const LETTER_PX = 6.5;

interface Props {
  out: readonly Absence[];
  scale: Scale;
  timeZone: string;
  fold: Fold;
}

/** Under the hours: when fewer people are at work, and how many fewer. */
export const PeopleRow = ({ out, scale, timeZone, fold }: Props) => (
  <svg className={styles.people} width={scale.width} height={PEOPLE_PX}>
    {out
      .filter(({ from, to }) => fold.at(to) > scale.from && fold.at(from) < endOf(scale))
      .map((absence) => {
        const x = Math.max(0, xOf(scale, fold.at(absence.from)));
        const width = Math.min(scale.width, xOf(scale, fold.at(absence.to))) - x;
        const long = `${counted(absence.people, 'person', 'people')} out`;
        const words = [long, `−${absence.people}`].find((each) => each.length * LETTER_PX + 12 < width);
        const wall = (at: number) => formatWall(instant(at), timeZone);
        const told = `${long}, ${wall(absence.from)} to ${wall(absence.to)}. ${absence.reason}`;
        return (
          <g key={absence.id} role="img" aria-label={told}>
            <title>{told}</title>
            <rect className={styles.out} x={x} width={Math.max(2, width)} {...BAND} />
            {words && (
              <text className={styles.outWords} x={x + 6} y={BAND.y + 12}>
                {words}
              </text>
            )}
          </g>
        );
      })}
  </svg>
);
