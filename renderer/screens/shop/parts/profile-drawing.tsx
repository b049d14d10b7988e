import type { Drawing, Line } from '../../../../core/part/drawing.ts';
import { formatLength, type LengthUnits } from '../../../../core/units/length.ts';
import styles from './parts.module.css';

interface Props {
  drawing: Drawing;
  thicknessMm: number;
  /** The accessible name, e.g. "Cross-section of Ridge cap". */
  label: string;
  /** Lengths beside the flanges; left out on small drawings. */
  lengths?: { readonly flangesMm: readonly number[]; readonly units: LengthUnits };
}

/** Thinner than these shares of the drawing a line would vanish, on a large one and on a small one. */
const THINNEST = { large: 1 / 110, small: 1 / 28 };

/** A profile's cross-section, true to scale but for metal too thin to see; a dashed line runs along the painted side. */
export function ProfileDrawing({ drawing, thicknessMm, label, lengths }: Props) {
  const { box, path, strokes, paint } = drawing;
  const size = Math.max(box.width, box.height, 1);
  const stroke = Math.max(thicknessMm, size * (lengths ? THINNEST.large : THINNEST.small));
  const margin = lengths ? size * 0.16 : size * 0.04;
  const view = [box.left - margin, box.top - margin, box.width + 2 * margin, box.height + 2 * margin];
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
              size={size}
              text={formatLength(lengths.flangesMm[flange.number - 1] ?? 0, lengths.units)}
            />
          ))}
        </>
      )}
    </svg>
  );
}

/** The length beside a flange, on the side away from the paint mark of a level one. */
function FlangeLength({ flange: { from, to }, size, text }: { flange: Line; size: number; text: string }) {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const long = Math.hypot(dx, dy) || 1;
  const away = size * 0.055;
  const at = { x: (from.x + to.x) / 2 + (dy / long) * away, y: (from.y + to.y) / 2 - (dx / long) * away };
  return (
    <text
      x={at.x}
      y={at.y}
      fontSize={size * 0.05}
      textAnchor="middle"
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
