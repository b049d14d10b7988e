import type { Profile } from './profile.ts';
import { ok, type Result } from '../result.ts';
import type { Forming } from './forming.ts';
import { isFold, stripOf, type Fold, type Piece } from './strip.ts';
import { radians } from './bend.ts';

/** Millimetres, x to the right, y down as in SVG. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Line {
  readonly kind: 'line';
  readonly of: 'flange' | 'lip';
  readonly number: number;
  readonly from: Point;
  readonly to: Point;
}

export interface Arc {
  readonly kind: 'arc';
  readonly of: 'bend' | 'hem';
  readonly number: number;
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radiusMm: number;
  /** Degrees turned through. */
  readonly angle: number;
  readonly direction: 'up' | 'down';
}

export interface Drawing {
  readonly strokes: readonly (Line | Arc)[];
  /** The same strokes as the `d` of an SVG path. */
  readonly path: string;
  readonly box: {
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
  };
  /** The middle of the longest flange and the unit step from it towards the painted side. */
  readonly paint: { readonly at: Point; readonly towards: Point };
}

/** Where the pen is and which way it looks: radians, 0 to the right, growing as it turns up. */
interface Pen {
  readonly at: Point;
  readonly heading: number;
}

const step = ({ at, heading }: Pen, distance: number): Point => ({
  x: at.x + distance * Math.cos(heading),
  y: at.y - distance * Math.sin(heading),
});

function drawFold(pen: Pen, fold: Fold): { arc: Arc; pen: Pen } {
  const { angle, radius, kFactor, thickness } = fold.shape;
  const radiusMm = radius + kFactor * thickness;
  const side = fold.direction === 'up' ? 1 : -1;
  const centre = step({ at: pen.at, heading: pen.heading + (side * Math.PI) / 2 }, radiusMm);
  const heading = pen.heading + side * radians(angle);
  const to = step({ at: centre, heading: heading - (side * Math.PI) / 2 }, radiusMm);
  const { number, direction } = fold;
  return {
    arc: { kind: 'arc', of: fold.kind, number, from: pen.at, to, centre, radiusMm, angle, direction },
    pen: { at: to, heading },
  };
}

/** The heading to start with so that the longest flange lies level. */
function levelHeading(strip: readonly Piece[], longest: Piece | undefined): number {
  const before = strip.slice(0, longest === undefined ? 0 : strip.indexOf(longest)).filter(isFold);
  return -before.reduce(
    (sum, { shape, direction }) => sum + (direction === 'up' ? 1 : -1) * radians(shape.angle),
    0,
  );
}

/** An arc's ends and the rightmost, top, leftmost and bottom points that it passes. */
function extremes({ from, to, centre, radiusMm, angle, direction }: Arc): Point[] {
  const side = direction === 'up' ? 1 : -1;
  const start = Math.atan2(centre.y - from.y, from.x - centre.x);
  const compass = [0, 1, 2, 3].map((quarter) => (quarter * Math.PI) / 2);
  const turn = 2 * Math.PI;
  const passed = compass.filter((at) => (((side * (at - start)) % turn) + turn) % turn < radians(angle));
  return [from, to, ...passed.map((heading) => step({ at: centre, heading }, radiusMm))];
}

function boxAround(strokes: readonly (Line | Arc)[]): Drawing['box'] {
  const points = strokes.flatMap((s) => (s.kind === 'arc' ? extremes(s) : [s.from, s.to]));
  const xs = points.map((p) => p.x);
  const ys = points.map((p) => p.y);
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  return { left, top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
}

/** Six decimals: fine enough that the girth can be measured back from the path; never "-0". */
const figure = (value: number): string => String(Math.round(value * 1e6) / 1e6 || 0);
const place = ({ x, y }: Point): string => `${figure(x)} ${figure(y)}`;

function svgPath(strokes: readonly (Line | Arc)[]): string {
  const moves = strokes.map((s) => {
    if (s.kind === 'line') return `L ${place(s.to)}`;
    const r = figure(s.radiusMm);
    return `A ${r} ${r} 0 ${s.angle > 180 ? 1 : 0} ${s.direction === 'up' ? 0 : 1} ${place(s.to)}`;
  });
  return [`M ${strokes[0] ? place(strokes[0].from) : '0 0'}`, ...moves].join(' ');
}

/**
 * A profile's cross-section as its neutral line, the longest flange level, for screens and travellers. Drawn with a
 * stroke as wide as the metal is thick it shows the part true to scale; its length is the computed girth.
 * @returns strokes from edge to edge; or the problems of `stripOf`
 */
export function drawProfile(profile: Profile, forming: Forming): Result<Drawing> {
  const strip = stripOf(profile, forming);
  if (!strip.ok) return strip;
  const flanges = strip.value.filter((piece) => piece.kind === 'flange');
  const longest = flanges.toSorted((a, b) => b.lengthMm - a.lengthMm || a.number - b.number)[0];
  let pen: Pen = { at: { x: 0, y: 0 }, heading: levelHeading(strip.value, longest) };
  const strokes: (Line | Arc)[] = [];
  for (const piece of strip.value) {
    if (isFold(piece)) {
      const drawn = drawFold(pen, piece);
      strokes.push(drawn.arc);
      pen = drawn.pen;
    } else {
      const to = step(pen, piece.lengthMm);
      strokes.push({ kind: 'line', of: piece.kind, number: piece.number, from: pen.at, to });
      pen = { at: to, heading: pen.heading };
    }
  }
  const level = strokes.find(
    (s): s is Line => s.kind === 'line' && s.of === 'flange' && s.number === longest?.number,
  );
  const at = { x: ((level?.from.x ?? 0) + (level?.to.x ?? 0)) / 2, y: level?.from.y ?? 0 };
  const towards = { x: 0, y: profile.paintedSide === 'up' ? -1 : 1 };
  return ok({ strokes, path: svgPath(strokes), box: boxAround(strokes), paint: { at, towards } });
}
