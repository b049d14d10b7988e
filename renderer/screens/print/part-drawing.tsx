import type { AngleMark, Dimensioned, LengthMark } from '../../../core/part/dimensions.ts';
import type { Drawing, Point } from '../../../core/part/drawing.ts';
import { formatLength, type LengthUnits } from '../../../core/units/length.ts';
import { drawingScale, scaleName } from './drawing-scale.ts';
import styles from './part-paper.module.css';

interface Props {
  dimensioned: Dimensioned;
  thicknessMm: number;
  units: LengthUnits;
  label: string;
}

/** Millimetres on paper: room for lengths round the part, how far off their lines lie, and the size of their figures. */
const ROOM = { beside: 26, above: 14 };
const OFF = 6;
const FIGURES = 3;
/** Metal thinner than this on paper would not print. */
const THINNEST = 0.35;

const plus = (a: Point, b: Point, times: number): Point => ({ x: a.x + b.x * times, y: a.y + b.y * times });

/** The cross-section true to scale with its lengths and angles; the SVG is as large on paper as it says. */
export function PartDrawing({ dimensioned: { drawing, lengths, angles }, thicknessMm, units, label }: Props) {
  const { box, path, paint } = drawing;
  const scale = drawingScale(box);
  /** Millimetres of the part that one millimetre on paper stands for. */
  const per = 1 / scale;
  const [width, height] = [box.width + 2 * ROOM.beside * per, box.height + 2 * ROOM.above * per];
  const paintAt = plus(paint.at, paint.towards, Math.max(thicknessMm / 2, 0.2 * per) + 0.8 * per);
  const half = Math.min(12 * per, box.width / 4);
  return (
    <figure className={styles.drawing}>
      <svg
        role="img"
        aria-label={label}
        width={`${width * scale}mm`}
        height={`${height * scale}mm`}
        viewBox={`${box.left - ROOM.beside * per} ${box.top - ROOM.above * per} ${width} ${height}`}
        fontSize={FIGURES * per}
      >
        <path
          d={path}
          fill="none"
          stroke="currentColor"
          strokeWidth={Math.max(thicknessMm, THINNEST * per)}
          strokeLinejoin="round"
        />
        <line
          x1={paintAt.x - half}
          x2={paintAt.x + half}
          y1={paintAt.y}
          y2={paintAt.y}
          stroke="currentColor"
          strokeWidth={0.35 * per}
          strokeDasharray={`${1.6 * per} ${per}`}
        />
        {lengths.map((mark) => (
          <Length key={`${mark.of} ${mark.number}`} mark={mark} per={per} units={units} />
        ))}
        <FirstEdge drawing={drawing} per={per} />
        {angles.map((mark) => (
          <Angle key={mark.number} mark={mark} lengths={lengths} per={per} />
        ))}
      </svg>
      <figcaption>{`Scale ${scaleName(scale)}; the dashed line is on the painted side. Check a printed length before you measure from paper.`}</figcaption>
    </figure>
  );
}

/** Where the bend list's first edge is. */
function FirstEdge({ drawing: { strokes }, per }: { drawing: Drawing; per: number }) {
  const flange = strokes.find((s) => s.kind === 'line' && s.of === 'flange');
  if (!flange) return null;
  const long = Math.hypot(flange.to.x - flange.from.x, flange.to.y - flange.from.y) || 1;
  const out = { x: (flange.from.x - flange.to.x) / long, y: (flange.from.y - flange.to.y) / long };
  const at = plus(flange.from, out, 3 * per);
  return (
    <text x={at.x} y={at.y} textAnchor={anchor(out.x)} dominantBaseline="middle" fill="currentColor">
      first edge
    </text>
  );
}

const anchor = (x: number): 'start' | 'end' | 'middle' => (x > 0.4 ? 'start' : x < -0.4 ? 'end' : 'middle');

/** A dimension line beside its length, with extension lines; a hem's lip has it on its inner side. */
function Length({ mark, per, units }: { mark: LengthMark; per: number; units: LengthUnits }) {
  const { from, to, lengthMm, of } = mark;
  const away = of === 'lip' ? { x: -mark.away.x, y: -mark.away.y } : mark.away;
  const [a, b] = [plus(from, away, OFF * per), plus(to, away, OFF * per)];
  const text = plus({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, away, 2 * per);
  const end = (p: Point) => plus(p, away, (OFF + 1) * per);
  return (
    <g strokeWidth={0.12 * per}>
      {[from, to].map((p, i) => (
        <line
          key={i}
          x1={plus(p, away, 1.2 * per).x}
          y1={plus(p, away, 1.2 * per).y}
          x2={end(p).x}
          y2={end(p).y}
          stroke="currentColor"
        />
      ))}
      <line x1={a.x} y1={a.y} x2={b.x} y2={b.y} stroke="currentColor" />
      {[a, b].map((p, i) => (
        <circle key={i} cx={p.x} cy={p.y} r={0.45 * per} fill="currentColor" />
      ))}
      <text x={text.x} y={text.y} textAnchor={anchor(away.x)} dominantBaseline="middle" fill="currentColor">
        {`${of === 'lip' ? 'hem ' : ''}${formatLength(lengthMm, units)}`}
      </text>
    </g>
  );
}

/** On the side of the bend where no dimension line runs. */
function Angle({
  mark: { at, away, angle, number },
  lengths,
  per,
}: {
  mark: AngleMark;
  lengths: readonly LengthMark[];
  per: number;
}) {
  const beside = lengths.filter((m) => m.of === 'flange' && (m.number === number || m.number === number + 1));
  const lined = beside.reduce((sum, m) => sum + m.away.x * away.x + m.away.y * away.y, 0);
  const side = lined > 0 ? -1 : 1;
  const text = plus(at, away, side * 4 * per);
  return (
    <text
      x={text.x}
      y={text.y}
      textAnchor={anchor(side * away.x)}
      dominantBaseline="middle"
      fill="currentColor"
    >
      {`${angle}°`}
    </text>
  );
}
