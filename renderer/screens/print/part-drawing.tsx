import { plus, type Dimensioned } from '../../../core/part/dimensions.ts';
import { hemEndWords } from '../../../core/part/hem.ts';
import { formatLength, type Units } from '../../../core/units/length.ts';
import type { Label } from '../shop/parts/length-places.ts';
import { drawingScale, scaleName } from './drawing-scale.ts';
import { placeMarks, type Layout, type PlacedLength } from './mark-places.ts';
import styles from './part-paper.module.css';

interface Props {
  dimensioned: Dimensioned;
  thicknessMm: number;
  units: Units;
  label: string;
}

/** Millimetres on paper: room for lengths round the part, and the size of their figures. */
const ROOM = { beside: 26, above: 14 };
const FIGURES = 3;
/** Metal thinner than this on paper would not print. */
const THINNEST = 0.35;

/** Where the words and lines round a part go on paper. */
export function layoutOf(
  { drawing: { box, paint } }: Dimensioned,
  thicknessMm: number,
  units: Units,
): Layout {
  const per = 1 / drawingScale(box);
  const at = plus(paint.at, paint.towards, Math.max(thicknessMm / 2, 0.2 * per) + 0.8 * per);
  const half = Math.min(12 * per, box.width / 4);
  return {
    per,
    height: FIGURES * per,
    view: {
      left: box.left - ROOM.beside * per,
      right: box.left + box.width + ROOM.beside * per,
      top: box.top - ROOM.above * per,
      bottom: box.top + box.height + ROOM.above * per,
    },
    paint: { from: { x: at.x - half, y: at.y }, to: { x: at.x + half, y: at.y } },
    hemText: ({ hem }) => `${hemEndWords(hem, { thicknessMm, units })}, ${hem.direction}`,
    textOf: ({ of, lengthMm }) => `${of === 'lip' ? 'hem ' : ''}${formatLength(lengthMm, units)}`,
  };
}

/** The cross-section true to scale with its lengths and angles; the SVG is as large on paper as it says. */
export function PartDrawing({ dimensioned, thicknessMm, units, label }: Props) {
  const layout = layoutOf(dimensioned, thicknessMm, units);
  const { per, view, height, paint } = layout;
  const { lengths, angles, hems, firstEdge } = placeMarks(dimensioned, layout);
  const [wide, high] = [view.right - view.left, view.bottom - view.top];
  return (
    <figure className={styles.drawing}>
      <svg
        role="img"
        aria-label={label}
        width={`${wide / per}mm`}
        height={`${high / per}mm`}
        viewBox={`${view.left} ${view.top} ${wide} ${high}`}
        fontSize={height}
      >
        <path
          d={dimensioned.drawing.path}
          fill="none"
          stroke="currentColor"
          strokeWidth={Math.max(thicknessMm, THINNEST * per)}
          strokeLinejoin="round"
        />
        <line
          x1={paint.from.x}
          x2={paint.to.x}
          y1={paint.from.y}
          y2={paint.to.y}
          stroke="currentColor"
          strokeWidth={0.35 * per}
          strokeDasharray={`${1.6 * per} ${per}`}
        />
        {lengths.map((placed) => (
          <Length key={`${placed.mark.of} ${placed.mark.number}`} placed={placed} per={per} />
        ))}
        {[...angles, ...hems, ...(firstEdge ? [firstEdge] : [])].map((words, i) => (
          <Words key={i} label={words} />
        ))}
      </svg>
      <figcaption>{`Scale ${scaleName(1 / per)}; angles are those turned; the dashed line is on the painted side. Check a printed length before you measure from paper.`}</figcaption>
    </figure>
  );
}

const Words = ({ label: { text, x, y, anchor } }: { label: Label }) => (
  <text x={x} y={y} textAnchor={anchor} dominantBaseline="middle" fill="currentColor">
    {text}
  </text>
);

/** A dimension line beside its length, with extension lines. */
function Length({ placed: { line, extensions, label }, per }: { placed: PlacedLength; per: number }) {
  return (
    <g strokeWidth={0.12 * per} stroke="currentColor">
      {extensions.map(({ from, to }, i) => (
        <line key={i} x1={from.x} y1={from.y} x2={to.x} y2={to.y} />
      ))}
      <line x1={line.from.x} y1={line.from.y} x2={line.to.x} y2={line.to.y} />
      {[line.from, line.to].map((p, i) => (
        <circle key={i} cx={p.x} cy={p.y} r={0.45 * per} fill="currentColor" stroke="none" />
      ))}
      <g stroke="none">
        <Words label={label} />
      </g>
    </g>
  );
}
