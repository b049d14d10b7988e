import type { Drawing, Line, Point } from '../../../../core/part/drawing.ts';

/** Words at a point of a drawing. */
export interface Label {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface LengthPlace extends Label {
  readonly flange: Line;
}

/** A stretch of the drawing, y down. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** About what a figure takes of its height. */
const CHARACTER = 0.62;
/** How far from its flange a length may stand, nearest first: on the side that looks away from the drawing, then inside. */
const DISTANCES = [1, -1, 1.9, -1.9, 2.8, -2.8];
/** Points looked at along each line of the drawing. */
const SAMPLES = 24;
/** How near a line may come to a label, in heights of the figures. */
const CLEAR = 0.1;

/**
 * Places for the lengths of a drawing's flanges, the longest flange first: beside its middle where no other length, no
 * line of the drawing and no mark of the paint is in the way, else the place where least is.
 * @param height of the figures, in the drawing's units
 * @param view what is shown: a length beyond it would be cut off
 * @param mark the line on the painted side
 */
export function placeLengths(
  { strokes, box }: Pick<Drawing, 'strokes' | 'box'>,
  { height, view, mark }: { readonly height: number; readonly view: Box; readonly mark: Ends },
  textOf: (flange: Line) => string,
): LengthPlace[] {
  const lines = strokes.filter((stroke): stroke is Line => stroke.kind === 'line');
  const drawn = [...lines, mark].flatMap(alongLine);
  const taken: Box[] = [];
  const flanges = lines.filter(({ of }) => of === 'flange').sort((a, b) => lengthOf(b) - lengthOf(a));
  return flanges.map((flange) => {
    const ways = DISTANCES.map((far) => placeAt(flange, textOf(flange), far, height, box));
    const best = leastInTheWay(ways, { height, taken, drawn, view });
    taken.push(boxOf(best, height));
    return best;
  });
}

/** What a label must keep off. */
interface InTheWay {
  /** Of the letters. */
  readonly height: number;
  /** Where other labels stand. */
  readonly taken: readonly Box[];
  /** Points of the lines that are drawn. */
  readonly drawn: readonly Point[];
  readonly view: Box;
}

/** The first of these places with the least in its way: another label or the picture's edge is worst. */
export function leastInTheWay<T extends Label>(
  places: readonly T[],
  { height, taken, drawn, view }: InTheWay,
): T {
  const inTheWay = (place: Label): number => {
    const own = boxOf(place, height);
    const others = taken.filter((other) => meet(own, other)).length;
    const cut = isWithin(own, view) ? 0 : 1;
    const round = grown(own, CLEAR * height);
    return 1000 * (others + cut) + drawn.filter((point) => holds(round, point)).length;
  };
  return places.reduce((a, b) => (inTheWay(b) < inTheWay(a) ? b : a));
}

const lengthOf = ({ from, to }: Line): number => Math.hypot(to.x - from.x, to.y - from.y);

export interface Ends {
  readonly from: Point;
  readonly to: Point;
}

/** Points along a line. */
export const alongLine = ({ from, to }: Ends): Point[] =>
  Array.from({ length: SAMPLES + 1 }, (_, k) => ({
    x: from.x + ((to.x - from.x) * k) / SAMPLES,
    y: from.y + ((to.y - from.y) * k) / SAMPLES,
  }));

function placeAt(flange: Line, text: string, far: number, height: number, box: Drawing['box']): LengthPlace {
  const { from, to } = flange;
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const long = lengthOf(flange) || 1;
  const normal = { x: (to.y - from.y) / long, y: (from.x - to.x) / long };
  const outward = { x: middle.x - box.left - box.width / 2, y: middle.y - box.top - box.height / 2 };
  const side = normal.x * outward.x + normal.y * outward.y < 0 ? -1 : 1;
  const away = side * far * height * 0.95;
  const lean = Math.sign(away) * normal.x;
  return {
    flange,
    text,
    x: middle.x + normal.x * away,
    y: middle.y + normal.y * away,
    anchor: lean > 0.4 ? 'start' : lean < -0.4 ? 'end' : 'middle',
  };
}

/** The room that a label takes. */
export function boxOf({ x, y, anchor, text }: Label, height: number): Box {
  const width = text.length * height * CHARACTER;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - height / 2, bottom: y + height / 2 };
}

export const meet = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

export const isWithin = (a: Box, b: Box): boolean =>
  a.left >= b.left && a.right <= b.right && a.top >= b.top && a.bottom <= b.bottom;

const grown = ({ left, right, top, bottom }: Box, by: number): Box => ({
  left: left - by,
  right: right + by,
  top: top - by,
  bottom: bottom + by,
});

const holds = ({ left, right, top, bottom }: Box, { x, y }: Point): boolean =>
  x > left && x < right && y > top && y < bottom;
