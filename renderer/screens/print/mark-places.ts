import { type Dimensioned, type HemMark, type LengthMark, plus } from '../../../core/part/dimensions.ts';
import type { Drawing, Point } from '../../../core/part/drawing.ts';
import {
  alongLine,
  boxOf,
  leastInTheWay,
  type Box,
  type Ends,
  type Label,
} from '../shop/parts/length-places.ts';

/** A dimension line and where its length stands. */
export interface PlacedLength {
  readonly mark: LengthMark;
  readonly line: Ends;
  /** From the part to a little beyond the dimension line, at either end of it. */
  readonly extensions: readonly Ends[];
  readonly label: Label;
}

/** All that is written round a part on paper. */
interface PlacedMarks {
  readonly lengths: readonly PlacedLength[];
  readonly angles: readonly Label[];
  readonly hems: readonly Label[];
  readonly firstEdge: Label | null;
}

/** How the drawing is laid out; `per` is the part's millimetres that one millimetre on paper stands for. */
export interface Layout {
  readonly per: number;
  /** Of the letters, in the part's millimetres. */
  readonly height: number;
  readonly view: Box;
  /** The line on the painted side. */
  readonly paint: Ends;
  readonly textOf: (mark: LengthMark) => string;
  readonly hemText: (mark: HemMark) => string;
}

/** Millimetres on paper: how far off the part its dimension lines lie, nearest first, and words off what they name. */
const LINES_OFF = [6, 12];
const WORDS_OFF = [2.8, 5, 7.5];
const BEYOND_ENDS = [2, 5];
const ANGLES_OFF = [4, 6.5, 9];
const HEMS_OFF = [3, 6, 9, 12, 15];
const EDGE_OFF = [3, 6, 9];

const back = ({ x, y }: Point): Point => ({ x: -x, y: -y });
const unit = ({ from, to }: Ends): Point => {
  const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  return { x: (to.x - from.x) / long, y: (to.y - from.y) / long };
};
const anchorOf = (x: number): Label['anchor'] => (x > 0.4 ? 'start' : x < -0.4 ? 'end' : 'middle');
const labelAt = (text: string, at: Point, towards: Point): Label => ({
  text,
  ...at,
  anchor: anchorOf(towards.x),
});

/**
 * Places for lengths, angles and the name of the first edge, so that none lies over another or over a line: the longest
 * length first, each at the usual place where that is free, else the nearest that is.
 */
export function placeMarks({ drawing, lengths, angles, hems }: Dimensioned, layout: Layout): PlacedMarks {
  const { height, view, paint } = layout;
  const metal = [...drawing.strokes, paint].flatMap(alongLine);
  const drawn: Point[] = [...metal];
  const taken: Box[] = [];
  const put = <T extends Label>(places: readonly T[]): T => {
    const best = leastInTheWay(places, { height, taken, drawn, view });
    taken.push(boxOf(best, height));
    return best;
  };
  const longest = lengths.toSorted((a, b) => b.lengthMm - a.lengthMm);
  const lined = longest.map((mark) => {
    const free = freeLine(mark, layout.per, drawn);
    const extensions = extensionsOf(mark, free, layout.per);
    drawn.push(...[free.line, ...extensions].flatMap(alongLine));
    return { mark, ...free, extensions };
  });
  const placed = lined.map(({ mark, away, line, extensions }): PlacedLength => {
    const label = put(lengthPlaces(layout.textOf(mark), line, away, layout.per));
    return { mark, line, extensions, label };
  });
  return {
    lengths: placed,
    angles: angles.map((mark) => put(foldPlaces(`${mark.angle}°`, mark, ANGLES_OFF, layout.per))),
    hems: hems.map((mark) => put(foldPlaces(layout.hemText(mark), mark, HEMS_OFF, layout.per))),
    firstEdge: edgePlaces(drawing, layout.per).map((places) => put(places))[0] ?? null,
  };
}

/** A dimension line where it crosses least, on its usual side first: a hem's lip has it on its inner side. */
function freeLine(mark: LengthMark, per: number, drawn: readonly Point[]) {
  const usual = mark.of === 'lip' ? back(mark.away) : mark.away;
  const ways = LINES_OFF.flatMap((off) =>
    [usual, back(usual)].map((away) => {
      const line = { from: plus(mark.from, away, off * per), to: plus(mark.to, away, off * per) };
      const near = alongLine(line).filter((p) => drawn.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < per));
      return { away, line, crossed: near.length };
    }),
  );
  return ways.reduce((a, b) => (b.crossed < a.crossed ? b : a));
}

const extensionsOf = (mark: LengthMark, { away, line }: { away: Point; line: Ends }, per: number): Ends[] =>
  (['from', 'to'] as const).map((end) => ({
    from: plus(mark[end], away, 1.2 * per),
    to: plus(line[end], away, per),
  }));

/** Beside the middle of the dimension line, on either side of it, or beyond its ends. */
function lengthPlaces(text: string, line: Ends, away: Point, per: number): Label[] {
  const middle = { x: (line.from.x + line.to.x) / 2, y: (line.from.y + line.to.y) / 2 };
  const along = unit(line);
  const beside = WORDS_OFF.flatMap((off) =>
    [away, back(away)].map((way) => labelAt(text, plus(middle, way, off * per), way)),
  );
  const beyond = BEYOND_ENDS.flatMap((off) => [
    labelAt(text, plus(line.to, along, off * per), along),
    labelAt(text, plus(line.from, along, -off * per), back(along)),
  ]);
  return [...beside, ...beyond];
}

/** On the inner side of a fold, where a bend is open, or on its outer side; else to either side of these. */
function foldPlaces(
  text: string,
  { at, away }: Pick<HemMark, 'at' | 'away'>,
  offs: readonly number[],
  per: number,
): Label[] {
  const across = { x: -away.y, y: away.x };
  const ways = [back(away), away, across, back(across)];
  return offs.flatMap((off) => ways.map((way) => labelAt(text, plus(at, way, off * per), way)));
}

/** Where the bend list's first edge is: beyond it, or to either side; none on a drawing without a flange. */
function edgePlaces({ strokes }: Drawing, per: number): Label[][] {
  const flange = strokes.find((stroke) => stroke.kind === 'line' && stroke.of === 'flange');
  if (!flange) return [];
  const out = back(unit(flange));
  const across = { x: -out.y, y: out.x };
  const ways = [out, across, back(across)];
  return [
    EDGE_OFF.flatMap((off) =>
      ways.map((way) => labelAt('first edge', plus(flange.from, way, off * per), way)),
    ),
  ];
}
