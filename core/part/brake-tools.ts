import type { Act, Chain } from './bend-steps.ts';
import { radians } from './bend.ts';

/**
 * The space that a press brake's tools take, as convex outlines round the bend line: x towards the back gauge, y up,
 * millimetres. A plain, careful picture: a gooseneck or a straight punch, a single-V die, the ram over the punch, the bed under the
 * die; for closing a hem two flat tools. Sizes are common practice, no source: the tool and machine makers' drawings
 * decide.
 */
type Outline = readonly (readonly [x: number, y: number])[];

const box = (left: number, right: number, low: number, high: number): Outline => [
  [left, low],
  [right, low],
  [right, high],
  [left, high],
];

/** The neck leans to the back, so that a flange already bent up finds room in front of it. */
const GOOSENECK: readonly Outline[] = [
  [
    [-1.5, 4],
    [0, 0.5],
    [18, 28],
    [12, 34],
  ],
  box(12, 40, 28, 82),
];
/** As wide in front of the bend line as behind it. */
const STRAIGHT: readonly Outline[] = [
  [
    [-12, 30],
    [0, 0.5],
    [12, 30],
  ],
  box(-12, 12, 30, 82),
];
/** What holds the punch, and the ram above it. */
const HOLDER: readonly Outline[] = [box(-15, 40, 82, 110), box(-25, 45, 110, 800)];

const DIE_SHOULDER = 8;
const DIE_HEIGHT = 60;
const BED_HALF = 45;
/** The V where a machine names none: eight thicknesses of light gauge. */
const USUAL_V = 8;

const dieAndBed = (openingMm: number): Outline[] => {
  const half = openingMm / 2 + DIE_SHOULDER;
  return [box(-half, half, -DIE_HEIGHT, -0.5), box(-BED_HALF, BED_HALF, -800, -DIE_HEIGHT)];
};

/** Flat tools reach this far over the hem's flange. */
const FLAT_DEPTH = 25;
const FLATS: readonly Outline[] = [
  box(-FLAT_DEPTH, 10, 1, 110),
  box(-FLAT_DEPTH, 10, -DIE_HEIGHT, -1),
  box(-BED_HALF, BED_HALF, 110, 800),
  box(-BED_HALF, BED_HALF, -800, -DIE_HEIGHT),
];

type Side = 'start' | 'end';

/** Angles that the joints have so far, in degrees. */
export type Angles = readonly number[];

/** Metal this deep inside a tool is a collision; less is a touch. */
const TOUCH = 0.5;

/** An outline as its edges: a point is inside by nx·x + ny·y − depth, less what counts as a touch. */
type Edges = readonly (readonly [nx: number, ny: number, depth: number])[];

/** `mirror` −1 turns the tools round, which is the same as turning the piece end for end. */
const edgesOf = (outline: Outline, mirror: 1 | -1): Edges =>
  outline.map((p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p;
    const [ex, ey] = [q[0] - p[0], q[1] - p[1]];
    const size = Math.hypot(ex, ey);
    return [(-ey / size) * mirror, ex / size, (ex * p[1] - ey * p[0]) / size + TOUCH] as const;
  });

/** Whether a line runs through a convex outline, by clipping it at each edge in turn. */
function crosses(ax: number, ay: number, bx: number, by: number, edges: Edges): boolean {
  let [from, to] = [0, 1];
  for (const [nx, ny, depth] of edges) {
    const da = nx * ax + ny * ay - depth;
    const db = nx * bx + ny * by - depth;
    if (da <= 0 && db <= 0) return false;
    const cut = da / (da - db);
    if (da <= 0) from = Math.max(from, cut);
    else if (db <= 0) to = Math.min(to, cut);
    if (from >= to) return false;
  }
  return true;
}

type Visit = (ax: number, ay: number, bx: number, by: number) => void;

/**
 * Walks outwards from a joint along one side and visits each straight length with its ends. A closed hem's lip lies on
 * its flange and is left out.
 */
function walk(chain: Chain, angles: Angles, joint: number, side: Side, heading: number, visit: Visit): void {
  const step = side === 'end' ? 1 : -1;
  const facing = chain.joints[joint]?.direction;
  let [x, y, towards] = [0, 0, heading];
  for (let i = side === 'end' ? joint + 1 : joint; i >= 0 && i < chain.lengthsMm.length; i += step) {
    const length = chain.lengthsMm[i] ?? 0;
    const toX = x + length * Math.cos(towards);
    const toY = y + length * Math.sin(towards);
    visit(x, y, toX, toY);
    [x, y] = [toX, toY];
    const next = side === 'end' ? i : i - 1;
    const angle = angles[next] ?? 0;
    if (angle >= 180) return;
    towards += step * (chain.joints[next]?.direction === facing ? 1 : -1) * radians(angle);
  }
}

/** Tools as edges, for either edge of the piece at the back. */
interface Tools {
  readonly end: readonly Edges[];
  readonly start: readonly Edges[];
}

const toolsOf = (outlines: readonly Outline[]): Tools => ({
  end: outlines.map((outline) => edgesOf(outline, 1)),
  start: outlines.map((outline) => edgesOf(outline, -1)),
});

const FLAT_TOOLS = toolsOf(FLATS);

export type PunchShape = 'gooseneck' | 'straight';

/** The tools of a V, ready to be asked often. */
export const benders = (dieOpeningMm: number | null, punch: PunchShape): Tools =>
  toolsOf([
    ...(punch === 'gooseneck' ? GOOSENECK : STRAIGHT),
    ...HOLDER,
    ...dieAndBed(dieOpeningMm ?? USUAL_V),
  ]);

/** How far along a bend the piece is looked at; it rises evenly on both sides. */
const STAGES = [0, 0.5, 1];

/** Whether the piece runs into the tools, with either edge at the back. */
type Collisions = Readonly<Record<Side, boolean>>;

/**
 * Whether the piece as bent so far runs into the tools while an act is carried out. The two lengths beside the bend
 * line are held by the tools and never count.
 */
export function collisions(chain: Chain, angles: Angles, act: Act, tools: Tools): Collisions {
  if (act.to >= 180) return closing(chain, angles, act.joint);
  const met = { start: false, end: false };
  for (const stage of STAGES) {
    const half = radians(act.from + stage * (act.to - act.from)) / 2;
    walk(chain, angles, act.joint, 'end', half, beyond(met, tools));
    walk(chain, angles, act.joint, 'start', Math.PI - half, beyond(met, tools));
  }
  return met;
}

/** Notes what meets the tools, but for the first length, which they hold. */
function beyond(met: { start: boolean; end: boolean }, tools: Tools): Visit {
  let held = true;
  return (ax, ay, bx, by) => {
    if (!held) {
      met.end ||= tools.end.some((edges) => crosses(ax, ay, bx, by, edges));
      met.start ||= tools.start.some((edges) => crosses(ax, ay, bx, by, edges));
    }
    held = false;
  };
}

/** A hem is closed with its flange level and its fold to the back; what hangs off the flange must clear the flat tools. */
function closing(chain: Chain, angles: Angles, joint: number): Collisions {
  const met = { start: false, end: false };
  const side: Side = chain.joints[joint]?.hem === 'start' ? 'end' : 'start';
  walk(chain, angles, joint, side, side === 'end' ? 0 : Math.PI, beyond(met, FLAT_TOOLS));
  return met;
}

/** How far an edge lies from the bend line when the piece lies on the die, for the back gauge. */
export function reachMm(chain: Chain, angles: Angles, joint: number, back: Side): number {
  let reach = 0;
  walk(chain, angles, joint, back, 0, (_ax, _ay, bx) => {
    reach = Math.max(reach, bx);
  });
  return reach;
}
