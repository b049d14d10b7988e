import type { Profile } from './profile.ts';
import type { Part } from './part.ts';
import { actsOf, chainOf, type Act, type BendStep, type Chain } from './bend-steps.ts';
import { benders, collisions, reachMm, type Angles, type PunchShape } from './brake-tools.ts';

type Side = 'start' | 'end';

/** One step of the brake as it is carried out. */
export interface PlacedStep {
  readonly step: BendStep;
  /** Which way the profile turns there as it is drawn, read from its first edge. */
  readonly direction: 'up' | 'down';
  /** Degrees that the fold has turned through when the step is done. */
  readonly angle: number;
  /** The edge that lies towards the back gauge. */
  readonly back: Side;
  readonly paintUp: boolean;
  /** What is done with the piece before it: rolled over its long axis, turned end for end, both, or nothing. */
  readonly flip: boolean;
  readonly turn: boolean;
  /** The piece as bent so far would run into the tools. */
  readonly collides: boolean;
}

export interface BendOrder {
  readonly steps: readonly PlacedStep[];
  readonly flips: number;
  readonly turns: number;
  readonly collisions: number;
}

/** As far as a back gauge usually goes (common practice, no source). */
const GAUGE_REACH_MM = 600;
/** Orders of so many steps are all looked at; longer ones keep this many at each step. */
const EXACT_STEPS = 10;
const KEPT = 16;

/** The first thing that differs decides: collisions, then flips and turns, then flips, then how unusual the order is. */
const COLLISION = 1e9;
const MOVE = 1e6;
const FLIP = 1e3;

interface Node {
  readonly done: number;
  readonly cost: number;
  readonly last: PlacedStep | null;
  readonly before: Node | null;
}

/** What all nodes of one search share. */
interface Ground {
  readonly profile: Profile;
  readonly chain: Chain;
  readonly acts: readonly Act[];
  /** For each act those that usually come before it. */
  readonly usual: readonly (readonly number[])[];
  readonly tools: ReturnType<typeof benders>;
}

/** Usual practice: hems first, each closed at once, then bends from the edges inwards (common practice, no source). */
function usuallyBefore({ joints }: Chain, acts: readonly Act[]): number[][] {
  const weight = acts.map(({ joint }, i) => {
    const hem = joints[joint]?.hem ?? null;
    return hem === null ? 1000 + 10 * Math.min(joint, joints.length - 1 - joint) + i / 100 : i;
  });
  return weight.map((mine) => weight.flatMap((other, k) => (other < mine ? [k] : [])));
}

/** Acts done are the bits of one number. There can be 33, one too many for bit operators. */
const isDone = (done: number, i: number): boolean => Math.floor(done / 2 ** i) % 2 === 1;

function anglesAt({ chain, acts }: Ground, done: number): Angles {
  const angles = chain.joints.map(() => 0);
  acts.forEach(({ joint, to }, i) => {
    if (isDone(done, i)) angles[joint] = to;
  });
  return angles;
}

/** What may come next: any bend, any hem's fold; but a hem that is folded is closed at once (common practice, no source). */
function nextOf({ acts }: Ground, done: number): number[] {
  const open = acts.findIndex(({ from }, i) => from > 0 && isDone(done, i - 1) && !isDone(done, i));
  if (open !== -1) return [open];
  return acts.flatMap(({ from }, i) => (from > 0 || isDone(done, i) ? [] : [i]));
}

/** A way to lay the piece for an act. */
interface Way {
  readonly back: Side;
  readonly collides: boolean;
  /** The longer side lies at the back, where the other one could. */
  readonly far: boolean;
}

/** The ways to lay the piece for an act: either edge at the back, as far as the gauge reaches; a hem that is closed, its own. */
function waysOf(ground: Ground, angles: Angles, i: number): Way[] {
  const { chain, tools } = ground;
  const act = ground.acts[i] as Act;
  const hem = chain.joints[act.joint]?.hem ?? null;
  const met = collisions(chain, angles, act, tools);
  const way = (back: Side, far: boolean): Way => ({ back, far, collides: met[back] });
  if (hem !== null && act.from > 0) return [way(hem, false)];
  const sides = (['start', 'end'] as const).map((back) => ({
    back,
    reach: reachMm(chain, angles, act.joint, back),
  }));
  const least = Math.min(...sides.map(({ reach }) => reach));
  return sides
    .filter(({ reach }) => reach <= Math.max(GAUGE_REACH_MM, least))
    .map(({ back, reach }) => way(back, reach > least));
}

function follow(ground: Ground, node: Node, i: number, { back, far, collides }: Way): Node {
  const { acts, chain, profile, usual } = ground;
  const act = acts[i] as Act;
  const direction = chain.joints[act.joint]?.direction ?? 'up';
  const paintUp = direction === profile.paintedSide;
  const { last } = node;
  // Rolled over its long axis, the piece also shows its other edge to the gauge.
  const flip = last !== null && last.paintUp !== paintUp;
  const turn = last !== null && (last.back === back) === flip;
  const unusual = (usual[i] ?? []).reduce((sum, k) => sum + (isDone(node.done, k) ? 0 : 1), 0);
  const cost =
    node.cost +
    (collides ? COLLISION : 0) +
    (flip ? MOVE + FLIP : 0) +
    (turn ? MOVE : 0) +
    unusual +
    (far ? 1 : 0);
  const placed = { step: act.step, direction, angle: act.to, back, paintUp, flip, turn, collides };
  return { done: node.done + 2 ** i, cost, last: placed, before: node };
}

/** Of nodes that have done the same and hold the piece the same way only the best goes on. */
function best(nodes: readonly Node[], keep: number): Node[] {
  const byState = new Map<number, Node>();
  for (const node of nodes) {
    const state = 4 * node.done + (node.last?.paintUp ? 2 : 0) + (node.last?.back === 'end' ? 1 : 0);
    const other = byState.get(state);
    if (other === undefined || node.cost < other.cost) byState.set(state, node);
  }
  const kept = [...byState.values()];
  return kept.length <= keep ? kept : kept.sort((a, b) => a.cost - b.cost).slice(0, keep);
}

/** Step by step through all orders that `next` allows; ties go to the first in reading order. */
function search(ground: Ground, next: (node: Node) => readonly number[]): BendOrder {
  let nodes: Node[] = [{ done: 0, cost: 0, last: null, before: null }];
  const keep = ground.acts.length <= EXACT_STEPS ? Infinity : KEPT;
  for (let placed = 0; placed < ground.acts.length; placed += 1) {
    const angles = new Map<number, Angles>();
    const ways = new Map<number, readonly Way[]>();
    const grown = nodes.flatMap((node) =>
      next(node).flatMap((i) => {
        const at = angles.get(node.done) ?? anglesAt(ground, node.done);
        angles.set(node.done, at);
        const key = node.done * ground.acts.length + i;
        const laid = ways.get(key) ?? waysOf(ground, at, i);
        ways.set(key, laid);
        return laid.map((way) => follow(ground, node, i, way));
      }),
    );
    nodes = best(grown, keep);
  }
  const end = nodes.reduce((a, b) => (b.cost < a.cost ? b : a));
  return orderOf(end);
}

function orderOf(end: Node): BendOrder {
  const steps: PlacedStep[] = [];
  for (let node: Node | null = end; node?.last; node = node.before) steps.unshift(node.last);
  const count = (is: (step: PlacedStep) => boolean): number => steps.filter(is).length;
  return {
    steps,
    flips: count((s) => s.flip),
    turns: count((s) => s.turn),
    collisions: count((s) => s.collides),
  };
}

function groundOf(profile: Profile, dieOpeningMm: number | null, punch: PunchShape = 'gooseneck'): Ground {
  const chain = chainOf(profile);
  const acts = actsOf(chain);
  return { profile, chain, acts, usual: usuallyBefore(chain, acts), tools: benders(dieOpeningMm, punch) };
}

/** Found orders by profile and V: a plan asks for the same ones again and again. */
const found = new WeakMap<Profile, Map<number | null, BendOrder>>();

/**
 * An order in which a brake can make the profile: without running into the tools where there is such an order, then
 * with the fewest flips and turns, then as usual in the trade. The piece is looked at by its drawn lengths, as lines
 * without thickness, among the tools of core/part/brake-tools.ts; up to ten steps every order is looked at.
 * @param dieOpeningMm the V set up; null takes a usual one
 * @returns every step of the profile once; none for a flat one. Depends on nothing but what is passed.
 */
export function bendOrder(profile: Profile, dieOpeningMm: number | null): BendOrder {
  const known = found.get(profile) ?? new Map<number | null, BendOrder>();
  found.set(profile, known);
  const before = known.get(dieOpeningMm);
  if (before) return before;
  const ground = groundOf(profile, dieOpeningMm);
  const order = search(ground, (node) => nextOf(ground, node.done));
  known.set(dieOpeningMm, order);
  return order;
}

/**
 * The same for an order that the shop gives: which edge lies at the back, flips, turns and collisions of just these
 * steps. @throws RangeError when they are not the profile's steps, each once: core/part/part.ts refuses such a part
 */
export function givenOrder(
  profile: Profile,
  dieOpeningMm: number | null,
  steps: readonly BendStep[],
  punch: PunchShape = 'gooseneck',
): BendOrder {
  const ground = groundOf(profile, dieOpeningMm, punch);
  const at = steps.map((step) => ground.acts.findIndex((act) => act.step === step));
  if (at.length !== ground.acts.length || new Set(at).size !== at.length || at.includes(-1))
    throw new RangeError('givenOrder: not the steps of this profile');
  const placed = (done: number): number => ground.acts.filter((_, i) => isDone(done, i)).length;
  return search(ground, (node) => [at[placed(node.done)] as number]);
}

/** The order in which the shop makes a part: its own where it gives one, else the found one. */
export const orderOfPart = (
  { profile, bendOrder: given }: Pick<Part, 'profile' | 'bendOrder'>,
  dieOpeningMm: number | null,
): BendOrder =>
  given === null ? bendOrder(profile, dieOpeningMm) : givenOrder(profile, dieOpeningMm, given);

/** What was found of straight punches, by profile, then by V and order. */
const clear = new WeakMap<Profile, Map<string, boolean>>();

/**
 * Whether a straight punch makes the part too, in the order in which it is bent and with no more turning: orders are found
 * for a gooseneck, so that a part is bent alike on every brake.
 */
export function clearsStraight(part: Pick<Part, 'profile' | 'bendOrder'>, dieOpeningMm: number): boolean {
  const known = clear.get(part.profile) ?? new Map<string, boolean>();
  clear.set(part.profile, known);
  const key = `${dieOpeningMm} ${(part.bendOrder ?? []).join(',')}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const order = orderOfPart(part, dieOpeningMm);
  const steps = order.steps.map(({ step }) => step);
  const straight = givenOrder(part.profile, dieOpeningMm, steps, 'straight');
  const does =
    straight.collisions <= order.collisions && straight.flips <= order.flips && straight.turns <= order.turns;
  known.set(key, does);
  return does;
}
