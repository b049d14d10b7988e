import type { Family } from '../../core/part/part.ts';

/**
 * The demo shop's parts, in inches as the trade draws them. Girths and bend counts lie within what is common for each
 * piece (common practice, no source).
 */

type Direction = 'up' | 'down';
/** Degrees turned through, and which way. */
type Turn = readonly [angle: number, direction: Direction];

interface Drawn {
  readonly name: string;
  readonly flanges: readonly number[];
  readonly turns?: readonly Turn[];
  /** Closed hems: lip length, and which way it folds. */
  readonly startHem?: readonly [number, Direction];
  readonly endHem?: readonly [number, Direction];
  readonly length: number;
  readonly note?: string;
}

const up = (angle: number): Turn => [angle, 'up'];
const down = (angle: number): Turn => [angle, 'down'];
const under = [0.5, 'down'] as const;

const drawn: Readonly<Record<string, Drawn>> = {
  'drip-edge': {
    name: 'Drip edge',
    flanges: [3.5, 2.5, 0.5],
    turns: [down(90), up(30)],
    endHem: under,
    length: 120,
  },
  'fascia-6': { name: 'Fascia 6 in', flanges: [6, 1.25], turns: [down(90)], startHem: under, length: 120 },
  'fascia-8': { name: 'Fascia 8 in', flanges: [8, 1.25], turns: [down(90)], startHem: under, length: 120 },
  'fascia-10': {
    name: 'Fascia 10 in, lipped',
    flanges: [1, 10, 1.25],
    turns: [down(90), down(90)],
    startHem: under,
    length: 120,
  },
  'ridge-cap': {
    name: 'Ridge cap',
    flanges: [6, 6],
    turns: [down(45)],
    startHem: under,
    endHem: under,
    length: 120,
    note: 'Angle to suit a 5 in 12 roof.',
  },
  'ridge-cap-wide': {
    name: 'Ridge cap, wide',
    flanges: [0.75, 7, 7, 0.75],
    turns: [up(45), down(45), up(45)],
    startHem: under,
    endHem: under,
    length: 120,
  },
  'hip-cap': {
    name: 'Hip cap',
    flanges: [0.5, 5, 5, 0.5],
    turns: [up(30), down(40), up(30)],
    startHem: under,
    endHem: under,
    length: 120,
  },
  'gable-trim': {
    name: 'Gable trim',
    flanges: [4, 3.5, 0.75],
    turns: [down(90), up(45)],
    endHem: under,
    length: 120,
  },
  'gable-trim-stepped': {
    name: 'Gable trim, stepped',
    flanges: [1, 3, 1, 4, 0.75],
    turns: [up(90), down(90), down(90), up(45)],
    startHem: under,
    endHem: under,
    length: 120,
  },
  'valley-plain': {
    name: 'Valley, plain',
    flanges: [10.5, 10.5],
    turns: [up(35)],
    startHem: [0.75, 'up'],
    endHem: [0.75, 'up'],
    length: 120,
  },
  'valley-w': {
    name: 'Valley, W',
    flanges: [10.25, 1, 1, 10.25],
    turns: [up(60), down(90), up(60)],
    startHem: [0.5, 'up'],
    endHem: [0.5, 'up'],
    length: 120,
  },
  'coping-8': {
    name: 'Coping, 8 in wall',
    flanges: [0.5, 3, 8.5, 2.5, 0.5],
    turns: [up(30), down(90), down(90), up(30)],
    startHem: under,
    endHem: under,
    length: 96,
  },
  'coping-12': {
    name: 'Coping, 12 in wall',
    flanges: [0.5, 3.5, 12.5, 3, 0.5],
    turns: [up(30), down(90), down(90), up(30)],
    startHem: under,
    endHem: under,
    length: 96,
  },
  sill: { name: 'Sill', flanges: [1.5, 4, 1.25], turns: [up(90), down(80)], endHem: under, length: 72 },
  head: { name: 'Head flashing', flanges: [3, 2, 1], turns: [up(90), down(80)], length: 72 },
  'inside-corner': {
    name: 'Inside corner',
    flanges: [1, 3, 3, 1],
    turns: [down(90), up(90), down(90)],
    length: 120,
  },
  'outside-corner': {
    name: 'Outside corner',
    flanges: [1, 0.75, 3, 3, 0.75, 1],
    turns: [up(90), down(90), down(90), down(90), up(90)],
    length: 120,
  },
  'j-channel': {
    name: 'J-channel',
    flanges: [2, 1, 1.25],
    turns: [up(90), up(90)],
    endHem: under,
    length: 120,
  },
  'z-bar': { name: 'Z-bar', flanges: [2, 1.5, 2], turns: [up(90), down(90)], length: 120 },
  'base-trim': { name: 'Base trim', flanges: [2.5, 1, 0.75], turns: [down(90), up(60)], length: 120 },
  counterflashing: {
    name: 'Counterflashing',
    flanges: [1, 4, 0.5],
    turns: [down(90), up(30)],
    endHem: under,
    length: 96,
  },
  apron: { name: 'Wall apron', flanges: [4, 6], turns: [down(70)], endHem: under, length: 96 },
  cleat: { name: 'Cleat', flanges: [3, 0.75], turns: [down(45)], length: 96, note: 'Colour does not show.' },
  'cover-strip': { name: 'Cover strip, flat', flanges: [6], length: 120, note: 'Sold flat.' },
};

const mm = (inches: number): number => Math.round(inches * 25_400) / 1000;

const hemOf = (hem: readonly [number, Direction] | undefined) =>
  hem ? { kind: 'closed', lengthMm: mm(hem[0]), direction: hem[1] } : null;

/** The wall copings are one shape: the widest flange follows the wall, the legs its cladding. */
const COPING = { pattern: 'coping-8', sizes: ['coping-12'], legs: { Outer: 2, Wall: 3, Inner: 4 } } as const;

function familyOf(id: string): Family | null {
  const { pattern, sizes, legs } = COPING;
  if ((sizes as readonly string[]).includes(id)) return { is: 'size', of: pattern };
  if (id !== pattern) return null;
  const flanges = Object.values(legs);
  return {
    is: 'pattern',
    dimensions: Object.entries(legs).map(([name, flange]) => ({ name, flanges: [flange] })),
    sizes: sizes.map((partId) => ({
      partId,
      name: drawn[partId]?.name ?? partId,
      lengthsMm: flanges.map((flange) => mm(drawn[partId]?.flanges[flange - 1] ?? NaN)),
    })),
  };
}

/** The rows of parts.json. */
export const partRows = () =>
  Object.entries(drawn).map(([id, part]) => ({
    id,
    name: part.name,
    profile: {
      flangesMm: part.flanges.map(mm),
      bends: (part.turns ?? []).map(([angle, direction]) => ({ angle, direction, radiusMm: null })),
      startHem: hemOf(part.startHem),
      endHem: hemOf(part.endHem),
      measured: 'outside',
      paintedSide: 'up',
    },
    lengthMm: mm(part.length),
    bendOrder: null,
    family: familyOf(id),
    extraBlanks: null,
    steps: [],
    note: part.note ?? '',
  }));
