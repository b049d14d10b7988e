import type { Offcut, PlacedBlank, SheetGroup } from '../../../core/cutting/plan.ts';
import { formatCutSize } from '../../../core/units/length.ts';
import type { Units } from '../../../core/units/length.ts';
import { classes } from '../../ui/classes.ts';
import styles from './drawing.module.css';
import { orderOfLine, PATTERNS, type OrderLook } from './order-look.ts';
import { counted } from '../../../core/units/count.ts';

interface Props {
  group: SheetGroup;
  units: Units;
  looks: ReadonlyMap<string, OrderLook>;
  /** Millimetres of the longest sheet drawn: all sheets of a run share one scale. */
  longestMm: number;
}

/** Drawing units: the longest sheet is so wide. Text is 12 of them high. */
const WIDE = 640;
const TEXT = 12;
const LETTER = 6.6;

/** One sheet of a group to scale: blanks, trim, remnants, scrap. */
export function SheetDrawing({ group, units, looks, longestMm }: Props) {
  const scale = WIDE / longestMm;
  const [width, height] = [group.lengthMm * scale, group.widthMm * scale];
  const size = formatCutSize(group.widthMm, group.lengthMm, units);
  return (
    <figure className={styles.figure}>
      <figcaption>
        <strong>{`${group.id}: ${counted(group.count, 'sheet')}`}</strong>
        {` of ${group.stockId}, ${size}${group.remnantStock ? ', remnant' : ''}`}
      </figcaption>
      <svg
        viewBox={`-1 -1 ${width + 2} ${height + 2}`}
        style={{ width: `${(100 * group.lengthMm) / longestMm}%` }}
        className={styles.sheet}
        role="img"
        aria-label={`Sheet ${group.id}: ${group.blanks.length} blanks`}
      >
        <Patterns />
        {group.offcuts.map((cut) => (
          <OffcutShape key={`${cut.x} ${cut.y}`} cut={cut} units={units} scale={scale} />
        ))}
        {group.blanks.map((blank) => (
          <Blank key={`${blank.x} ${blank.y}`} blank={blank} units={units} looks={looks} scale={scale} />
        ))}
        <rect width={width} height={height} className={styles.outline} />
      </svg>
    </figure>
  );
}

/** What each kind of offcut is called on the drawing. */
const OFFCUT = { remnant: 'remnant', scrap: 'scrap', trim: 'trim', left: 'left uncut' } as const;

function OffcutShape({ cut, units, scale }: { cut: Offcut; units: Units; scale: number }) {
  const name = OFFCUT[cut.kind];
  const size = formatCutSize(cut.h, cut.w, units);
  const box = scaled(cut, scale);
  return (
    <g>
      <rect {...box} className={styles[cut.kind]}>
        <title>{`${name}: ${size}`}</title>
      </rect>
      <Words
        text={cut.kind === 'scrap' || cut.kind === 'trim' ? name : `${name} ${size}`}
        short={name}
        rect={box}
      />
    </g>
  );
}

type Box = { x: number; y: number; width: number; height: number };
const scaled = (r: { x: number; y: number; w: number; h: number }, scale: number): Box => ({
  x: r.x * scale,
  y: r.y * scale,
  width: r.w * scale,
  height: r.h * scale,
});

function Blank({
  blank,
  units,
  looks,
  scale,
}: Pick<Props, 'units' | 'looks'> & { blank: PlacedBlank; scale: number }) {
  const box = scaled(blank, scale);
  const line = blank.lines[0] ?? '';
  const look = looks.get(orderOfLine(line)) ?? { ground: 0, pattern: 0 };
  const size = formatCutSize(blank.h, blank.w, units);
  const more = blank.lines.length > 1 ? ` +${blank.lines.length - 1}` : '';
  const name = line === '' ? 'not asked for' : `${line}${more}`;
  return (
    <g>
      <title>{`${blank.lines.join(', ') || name}: ${size}`}</title>
      <rect {...box} className={classes(styles.blank, styles[`ground${look.ground}`])} />
      {look.pattern > 0 && <rect {...box} fill={`url(#blank-pattern-${look.pattern})`} />}
      <Words text={`${name}: ${size}`} short={name} rect={box} />
    </g>
  );
}

/** The text where it fits, else the short one, else nothing: the list below has all. */
function Words({ text, short = '', rect }: { text: string; short?: string; rect: Box }) {
  const fits = (words: string) => words !== '' && words.length * LETTER + 8 <= rect.width;
  const words = rect.height < TEXT ? '' : fits(text) ? text : fits(short) ? short : '';
  if (words === '') return null;
  const [x, y] = [rect.x + rect.width / 2, rect.y + rect.height / 2];
  const wide = words.length * LETTER + 8;
  return (
    <>
      <rect x={x - wide / 2} y={y - TEXT / 2} width={wide} height={TEXT} className={styles.plate} />
      <text x={x} y={y} className={styles.words}>
        {words}
      </text>
    </>
  );
}

/** Lines in three directions; their names are the same in every drawing, so any of them serves all. */
const Patterns = () => (
  <defs>
    {Array.from({ length: PATTERNS }, (_, n) => n)
      .slice(1)
      .map((n) => (
        <pattern
          key={n}
          id={`blank-pattern-${n}`}
          width="8"
          height="8"
          patternUnits="userSpaceOnUse"
          patternTransform={`rotate(${[0, 45, 90, 135][n] ?? 0})`}
        >
          <line x1="0" y1="0" x2="0" y2="8" className={styles.hatch} />
        </pattern>
      ))}
  </defs>
);
