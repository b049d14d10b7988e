import { clearsStraight } from './bend-order.ts';
import { sameV } from './house-v.ts';
import type { Part } from './part.ts';
import type { Profile } from './profile.ts';
import type { Tool } from './tool.ts';

/** What is set up on a brake to bend a part. */
export interface ToolSet {
  readonly die: Tool;
  readonly punch: Tool;
  /** Null for a part without hems. */
  readonly hemming: Tool | null;
}

/** A part to be bent: in which V, how long, and how hard it presses on the tools. */
export interface Bending {
  readonly part: Pick<Part, 'profile' | 'bendOrder'>;
  readonly vMm: number;
  /** Inside radius that the V makes in the metal. */
  readonly vRadiusMm: number;
  readonly lengthMm: number;
  /** Force by length, kN/m: of the bends, and of the hems, 0 without any. */
  readonly bendKnPerM: number;
  readonly hemKnPerM: number;
}

/** The tools chosen; or what the brake lacks, each as it follows "has": "no hemming tools". */
export type ToolChoice =
  { readonly set: ToolSet; readonly lacks: null } | { readonly set: null; readonly lacks: readonly string[] };

export const toolsOn = (machineId: string, tools: readonly Tool[]): Tool[] =>
  tools.filter(({ machineIds }) => machineIds.includes(machineId));

/** One that fits several brakes. */
export const isShared = ({ machineIds }: Pick<Tool, 'machineIds'>): boolean => machineIds.length > 1;

export const isHemmed = ({ startHem, endHem }: Profile): boolean => startHem !== null || endHem !== null;

/** An angle as drawn differs by less. */
const SAME_DEGREES = 0.5;

/** The sharpest of the bends, in degrees between their flanges; hems are folded by the hemming tools themselves. */
const sharpestOf = ({ bends }: Profile): number => 180 - Math.max(0, ...bends.map(({ angle }) => angle));

/**
 * The tools that a brake takes for a part: a die of the house V, a punch (a gooseneck where a straight one would be hit in
 * the order in which the part is bent), hemming tools for hems; each at least as long as the piece, each as sharp as the
 * sharpest bend. Of several the one that stands the load comes first, then the punch that leaves the bends nearest to the
 * radius that they ask for, then one that no other brake needs, then the longest, so that the same metal finds the same tools.
 * Common practice, no source.
 * @param own the brake's tools, at least one
 */
export function chooseTools(bending: Bending, own: readonly Tool[]): ToolChoice {
  const { part, vMm, vRadiusMm, lengthMm, bendKnPerM, hemKnPerM } = bending;
  const sharpest = sharpestOf(part.profile);
  const sharp = ({ angleDeg }: Tool): boolean => (angleDeg ?? 0) <= sharpest + SAME_DEGREES;
  const lacks: string[] = [];
  const pick = (what: string, all: readonly Tool[], knPerM: number, fits = sharp): Tool | undefined => {
    const sharpEnough = all.filter(fits);
    const long = sharpEnough.filter((tool) => tool.lengthMm >= lengthMm);
    const [first] = long.toSorted(byUse(knPerM, offRadius(part.profile, vRadiusMm)));
    if (first) return first;
    const why = all.length === 0 ? '' : sharpEnough.length === 0 ? ' sharp enough' : ' long enough';
    lacks.push(`no ${what}${why}`);
    return undefined;
  };
  const ofKind = (kind: Tool['kind']): Tool[] => own.filter((tool) => tool.kind === kind);
  const die = pick(
    `die of the V for this metal`,
    ofKind('die').filter(({ openingMm }) => sameV(openingMm, vMm)),
    bendKnPerM,
  );
  const straightDoes = clearsStraight(part, vMm);
  const punch = pick(
    straightDoes ? 'punch' : 'gooseneck punch',
    ofKind('punch').filter(({ gooseneck }) => straightDoes || gooseneck),
    bendKnPerM,
  );
  const hemmed = isHemmed(part.profile);
  const hemming = hemmed ? pick('hemming tools', ofKind('hemming'), hemKnPerM, () => true) : undefined;
  if (!die || !punch || (hemmed && !hemming)) return { set: null, lacks };
  return { set: { die, punch, hemming: hemming ?? null }, lacks: null };
}

/**
 * How far a punch's tip takes the bends off the radius that they ask for: the least one drawn, where every bend names one,
 * else what the V makes, which no punch makes smaller.
 */
function offRadius({ bends }: Profile, vRadiusMm: number): (tool: Tool) => number {
  const asked = Math.max(vRadiusMm, Math.min(...bends.map(({ radiusMm }) => radiusMm ?? vRadiusMm)));
  const wanted = bends.length === 0 ? vRadiusMm : asked;
  return ({ kind, radiusMm }) =>
    kind === 'punch' ? Math.abs(Math.max(vRadiusMm, radiusMm ?? 0) - wanted) : 0;
}

const byUse =
  (knPerM: number, off: (tool: Tool) => number) =>
  (a: Tool, b: Tool): number =>
    Number(isOver(a, knPerM)) - Number(isOver(b, knPerM)) ||
    off(a) - off(b) ||
    Number(isShared(a)) - Number(isShared(b)) ||
    Number(a.gooseneck) - Number(b.gooseneck) ||
    b.lengthMm - a.lengthMm ||
    (a.id < b.id ? -1 : 1);

/** Whether a load is above what the tool stands, where that is known. */
export const isOver = ({ ratingKnPerM }: Pick<Tool, 'ratingKnPerM'>, knPerM: number): boolean =>
  ratingKnPerM !== null && knPerM > ratingKnPerM;
