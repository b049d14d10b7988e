import type { Drawing, Line } from '../../../../core/part/drawing.ts';
import { formatLength, type LengthUnits } from '../../../../core/units/length.ts';
import styles from './parts.module.css';

interface Props {
  drawing: Drawing;
  thicknessMm: number;
  /** The accessible name, e.g. "Cross-section of Ridge cap". */
  label: string;
  /** Lengths beside the flanges; left out on small drawings. */
  lengths?: {
    readonly flangesMm: readonly number[];
    readonly units: LengthUnits;
    /** Read from some metres away: larger figures. */
    readonly far?: boolean;
  };
}

/** Thinner than these shares of the drawing a line would vanish, on a large one and on a small one. */
const THINNEST = { large: 1 / 110, small: 1 / 28 };

/** Height of the figures and the room for them beside the drawing, as shares of it. */
const FIGURES = { near: { height: 0.05, beside: 0.28 }, far: { height: 0.08, beside: 0.38 } };

/** A profile's cross-section, true to scale but for metal too thin to see; a dashed line runs along the painted side. */
export function ProfileDrawing({ drawing, thicknessMm, label, lengths }: Props) {
  const { box, path, strokes, paint } = drawing;
  const size = Math.max(box.width, box.height, 1);
  const stroke = Math.max(thicknessMm, size * (lengths ? THINNEST.large : THINNEST.small));
  const figures = lengths?.far ? FIGURES.far : FIGURES.near;
  const [beside, above] = lengths ? [size * figures.beside, size * 0.12] : [size * 0.04, size * 0.04];
  const view = [box.left - beside, box.top - above, box.width + 2 * beside, box.height + 2 * above];
  const flanges = strokes.filter((s): s is Line => s.kind === 'line' && s.of === 'flange');
  return (
    <svg className={styles.drawing} viewBox={view.join(' ')} role="img" aria-label={label}>
      <path d={path} fill="none" stroke="currentColor" strokeWidth={stroke} strokeLinejoin="round" />
      {lengths && (
        <>
          <PaintMark paint={paint} size={size} stroke={stroke} />
          {flanges.map((flange) => (
            <FlangeLength
              key={flange.number}
              flange={flange}
              box={box}
              size={size}
              height={size * figures.height}
              text={formatLength(lengths.flangesMm[flange.number - 1] ?? 0, lengths.units)}
            />
          ))}
        </>
      )}
    </svg>
  );
}

interface LengthProps {
  flange: Line;
  box: Drawing['box'];
  size: number;
  height: number;
  text: string;
}

/** The length beside a flange, on the side that looks away from the middle of the drawing. */
function FlangeLength({ flange: { from, to }, box, size, height, text }: LengthProps) {
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const normal = { x: (to.y - from.y) / long, y: (from.x - to.x) / long };
  const outward = { x: middle.x - box.left - box.width / 2, y: middle.y - box.top - box.height / 2 };
  const side = normal.x * outward.x + normal.y * outward.y < 0 ? -1 : 1;
  const away = side * Math.max(size * 0.05, height * 0.95);
  const lean = side * normal.x;
  return (
    <text
      x={middle.x + normal.x * away}
      y={middle.y + normal.y * away}
      fontSize={height}
      textAnchor={lean > 0.4 ? 'start' : lean < -0.4 ? 'end' : 'middle'}
      dominantBaseline="middle"
      className={styles.length}
    >
      {text}
    </text>
  );
}

function PaintMark({ paint, size, stroke }: { paint: Drawing['paint']; size: number; stroke: number }) {
  const half = size * 0.1;
  const y = paint.at.y + paint.towards.y * (stroke / 2 + size * 0.018);
  return (
    <line
      x1={paint.at.x - half}
      x2={paint.at.x + half}
      y1={y}
      y2={y}
      className={styles.paint}
      strokeWidth={size * 0.008}
      strokeDasharray={`${size * 0.02} ${size * 0.012}`}
    />
  );
}
