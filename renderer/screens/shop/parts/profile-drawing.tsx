import type { Drawing } from '../../../../core/part/drawing.ts';
import { formatLength, type Units } from '../../../../core/units/length.ts';
import { placeLengths, type Ends, type LengthPlace } from './length-places.ts';
import styles from './parts.module.css';

interface Props {
  drawing: Drawing;
  thicknessMm: number;
  /** The accessible name, e.g. "Cross-section of Ridge cap". */
  label: string;
  /** Lengths beside the flanges; left out on small drawings. */
  lengths?: {
    readonly flangesMm: readonly number[];
    readonly units: Units;
    /** Read from some metres away: larger figures. */
    readonly far?: boolean;
  };
  /** The step of the brake whose fold is marked: "bend 2", "close end hem". */
  marked?: string;
}

/** Thinner than these shares of the drawing a line would vanish, on a large one and on a small one. */
const THINNEST = { large: 1 / 110, small: 1 / 28 };

/** Height of the figures and the room for them beside the drawing, as shares of it. */
const FIGURES = { near: { height: 0.05, beside: 0.28 }, far: { height: 0.08, beside: 0.38 } };

/** A profile's cross-section, true to scale but for metal too thin to see; a dashed line runs along the painted side. */
export function ProfileDrawing({ drawing, thicknessMm, label, lengths, marked }: Props) {
  const { box, path, paint } = drawing;
  const size = Math.max(box.width, box.height, 1);
  const stroke = Math.max(thicknessMm, size * (lengths ? THINNEST.large : THINNEST.small));
  const figures = lengths?.far ? FIGURES.far : FIGURES.near;
  const [beside, above] = lengths ? [size * figures.beside, size * 0.12] : [size * 0.04, size * 0.04];
  const view = {
    left: box.left - beside,
    right: box.left + box.width + beside,
    top: box.top - above,
    bottom: box.top + box.height + above,
  };
  const height = size * figures.height;
  const mark = paintMark(paint, size, stroke);
  return (
    <svg
      className={styles.drawing}
      viewBox={[view.left, view.top, view.right - view.left, view.bottom - view.top].join(' ')}
      role="img"
      aria-label={label}
    >
      <path d={path} fill="none" stroke="currentColor" strokeWidth={stroke} strokeLinejoin="round" />
      {marked !== undefined && <FoldMark drawing={drawing} step={marked} size={size} />}
      {lengths && (
        <>
          <PaintMark mark={mark} size={size} />
          <FlangeLengths
            height={height}
            places={placeLengths(drawing, { height, view, mark }, ({ number }) =>
              formatLength(lengths.flangesMm[number - 1] ?? 0, lengths.units),
            )}
          />
        </>
      )}
    </svg>
  );
}

/** A ring round the fold that a step makes. */
function FoldMark({ drawing, step, size }: { drawing: Drawing; step: string; size: number }) {
  const arcs = drawing.strokes.filter((stroke) => stroke.kind === 'arc');
  const hems = arcs.filter(({ of }) => of === 'hem');
  const arc = step.endsWith('hem')
    ? step.endsWith('start hem')
      ? hems[0]
      : hems.at(-1)
    : arcs.find(({ of, number }) => of === 'bend' && step === `bend ${number}`);
  if (!arc) return null;
  const { from, to } = arc;
  return (
    <circle
      cx={(from.x + to.x) / 2}
      cy={(from.y + to.y) / 2}
      r={size * 0.07}
      className={styles.foldMark}
      strokeWidth={size * 0.014}
    />
  );
}

/** Each length beside its flange. */
const FlangeLengths = ({ places, height }: { places: readonly LengthPlace[]; height: number }) =>
  places.map(({ flange, text, x, y, anchor }) => (
    <text
      key={flange.number}
      x={x}
      y={y}
      fontSize={height}
      textAnchor={anchor}
      dominantBaseline="middle"
      className={styles.length}
    >
      {text}
    </text>
  ));

/** Along the painted side, clear of the metal. */
function paintMark({ at, towards }: Drawing['paint'], size: number, stroke: number): Ends {
  const half = size * 0.1;
  const y = at.y + towards.y * (stroke / 2 + size * 0.018);
  return { from: { x: at.x - half, y }, to: { x: at.x + half, y } };
}

const PaintMark = ({ mark: { from, to }, size }: { mark: Ends; size: number }) => (
  <line
    x1={from.x}
    x2={to.x}
    y1={from.y}
    y2={to.y}
    className={styles.paint}
    strokeWidth={size * 0.008}
    strokeDasharray={`${size * 0.02} ${size * 0.012}`}
  />
);
