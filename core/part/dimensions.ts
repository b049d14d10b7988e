import type { Hem, Profile } from './profile.ts';
import { ok, type Result } from '../result.ts';
import { radians, setback } from './bend.ts';
import { drawProfile, type Arc, type Drawing, type Line, type Point } from './drawing.ts';
import type { Forming } from './forming.ts';
import { bendShapes, hemFold } from './strip.ts';

/** A flange's or lip's length as the drawing gives it, between the points that it is measured to. */
export interface LengthMark {
  readonly of: 'flange' | 'lip';
  readonly number: number;
  readonly lengthMm: number;
  /** On the neutral line, carried on past the tangent points to where it is measured. */
  readonly from: Point;
  readonly to: Point;
  /** Unit step away from the middle of the drawing. */
  readonly away: Point;
}

/** The angle of a bend. */
export interface AngleMark {
  readonly number: number;
  readonly angle: number;
  /** The middle of the arc, and the unit step to its outer side. */
  readonly at: Point;
  readonly away: Point;
}

/** What a hem is, beside its fold. */
export interface HemMark {
  readonly edge: 'start' | 'end';
  readonly hem: Hem;
  /** The middle of the fold, and the unit step to its outer side. */
  readonly at: Point;
  readonly away: Point;
}

export interface Dimensioned {
  readonly drawing: Drawing;
  readonly lengths: readonly LengthMark[];
  readonly angles: readonly AngleMark[];
  readonly hems: readonly HemMark[];
}

export const plus = (a: Point, b: Point, times: number): Point => ({
  x: a.x + b.x * times,
  y: a.y + b.y * times,
});

function lengthMark(
  line: Line,
  drawing: Drawing,
  lengthMm: number,
  before: number,
  after: number,
): LengthMark {
  const long = Math.hypot(line.to.x - line.from.x, line.to.y - line.from.y) || 1;
  const along = { x: (line.to.x - line.from.x) / long, y: (line.to.y - line.from.y) / long };
  const from = plus(line.from, along, -before);
  const to = plus(line.to, along, after);
  const { box } = drawing;
  const outward = {
    x: (from.x + to.x) / 2 - box.left - box.width / 2,
    y: (from.y + to.y) / 2 - box.top - box.height / 2,
  };
  const normal = { x: along.y, y: -along.x };
  const side = normal.x * outward.x + normal.y * outward.y < 0 ? -1 : 1;
  const away = { x: side * normal.x, y: side * normal.y };
  return { of: line.of, number: line.number, lengthMm, from, to, away };
}

/** The middle of an arc, halfway along its turn from where it begins, and its outer side. */
function middleOf({ from, centre, radiusMm, angle, direction }: Arc): Pick<AngleMark, 'at' | 'away'> {
  const half = radians(angle / 2) * (direction === 'up' ? -1 : 1);
  const [x, y] = [(from.x - centre.x) / (radiusMm || 1), (from.y - centre.y) / (radiusMm || 1)];
  const away = {
    x: x * Math.cos(half) - y * Math.sin(half),
    y: x * Math.sin(half) + y * Math.cos(half),
  };
  return { at: plus(centre, away, radiusMm), away };
}

/** Each hem beside its own fold: the first arc and the last. */
const hemMarks = ({ startHem, endHem }: Profile, arcs: readonly Arc[]): HemMark[] =>
  (
    [
      ['start', startHem, arcs[0]],
      ['end', endHem, arcs.at(-1)],
    ] as const
  ).flatMap(([edge, hem, arc]) => (hem && arc ? [{ edge, hem, ...middleOf(arc) }] : []));

/**
 * A profile's drawing with the lengths and angles that it was given by, for paper and for screens. A length runs between
 * the points that it is measured to: over the outside, inside, or to the apex of the bends; a lip over its fold.
 * @returns the drawing and its marks, edge to edge; or the problems of `drawProfile`
 */
export function dimensioned(profile: Profile, forming: Forming): Result<Dimensioned> {
  const drawn = drawProfile(profile, forming);
  if (!drawn.ok) return drawn;
  const drawing = drawn.value;
  const backs = bendShapes(profile, forming).map((shape) => setback(profile.measured, shape));
  const hemBack = (hem: Profile['startHem']): number => {
    if (hem === null) return 0;
    const { radius, thickness } = hemFold(hem, forming);
    return radius + thickness;
  };
  const last = profile.flangesMm.length;
  const lengths = drawing.strokes.flatMap((stroke): LengthMark[] => {
    if (stroke.kind !== 'line') return [];
    const { number } = stroke;
    if (stroke.of === 'lip') {
      const atStart = stroke === drawing.strokes[0];
      const hem = atStart ? profile.startHem : profile.endHem;
      const back = hemBack(hem);
      return [lengthMark(stroke, drawing, hem?.lengthMm ?? 0, atStart ? 0 : back, atStart ? back : 0)];
    }
    const before = number === 1 ? hemBack(profile.startHem) : (backs[number - 2] ?? 0);
    const after = number === last ? hemBack(profile.endHem) : (backs[number - 1] ?? 0);
    return [lengthMark(stroke, drawing, profile.flangesMm[number - 1] ?? 0, before, after)];
  });
  const arcs = drawing.strokes.filter((stroke): stroke is Arc => stroke.kind === 'arc');
  const angles = arcs
    .filter(({ of }) => of === 'bend')
    .map((arc) => ({ number: arc.number, angle: arc.angle, ...middleOf(arc) }));
  return ok({ drawing, lengths, angles, hems: hemMarks(profile, arcs) });
}
