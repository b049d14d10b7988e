import type { Machine } from '../shop/machine.ts';
import { formatReckonedTonnes, formatTonnes, formatTonnesPerLength } from '../units/force.ts';
import { formatLength } from '../units/length.ts';
import { found, type Asked, type Found } from './finding.ts';
import type { RuleName } from '../part/rules.ts';
import { mostPerMm } from '../part/concentrated-load.ts';
import { hemForce } from '../part/hem-force.ts';
import { airBendKn, KN_PER_TONNE } from '../part/tonnage.ts';

/** Bending-force charts differ by a fifth either way; so do rules for hems. */
const CHART_SPREAD = 1.2;

/** Something a brake presses along the whole piece. */
interface Load {
  /** "Bending", "Closing a hem". */
  readonly work: string;
  readonly tonnes: number;
  readonly rules: { readonly over: RuleName; readonly near: RuleName };
  /** What helps where the brake has too little. */
  readonly advice: string;
  /** What to know of the figure, a sentence with a blank before it; usually empty. */
  readonly note: string;
}

/** Whether a brake's force bends the part and makes its hems, as a whole and over the length that it is spread on. */
export function forceLimits(asked: Asked, machine: Machine): Found[] {
  const { tonnes } = machine;
  if (tonnes === null) return [];
  return [...bendLoad(asked, machine), ...hemLoad(asked)].flatMap((load) => {
    const whole = wholeForce(load, asked, machine, tonnes);
    return whole.some(({ rule }) => rule === load.rules.over)
      ? whole
      : [...whole, ...concentrated(load, asked, machine, tonnes)];
  });
}

function bendLoad({ part, material, gauge, lengthMm }: Asked, { dieOpeningMm }: Machine): Load[] {
  if (dieOpeningMm === null || part.profile.bends.length === 0) return [];
  const { thicknessMm } = gauge;
  const { tensileMpa } = material;
  return [
    {
      work: 'Bending',
      tonnes: airBendKn({ thicknessMm, lengthMm, tensileMpa, dieOpeningMm }) / KN_PER_TONNE,
      rules: { over: 'bending force', near: 'bending force, margin' },
      advice: 'Use a wider V, a stronger machine or shorter pieces.',
      note: '',
    },
  ];
}

const MAKING = {
  closed: 'Closing a hem',
  open: 'Making an open hem',
  teardrop: 'Making a teardrop hem',
} as const;

/** The hem that takes most: a closed one before the others. */
function hemLoad({ part, material, gauge, lengthMm }: Asked): Load[] {
  const kinds = [part.profile.startHem, part.profile.endHem].flatMap((hem) => hem?.kind ?? []);
  const kind = kinds.find((hem) => hem === 'closed') ?? kinds[0];
  if (kind === undefined) return [];
  const { thicknessMm } = gauge;
  const { kn, beyondTable } = hemForce(kind, { thicknessMm, lengthMm, tensileMpa: material.tensileMpa });
  return [
    {
      work: MAKING[kind],
      tonnes: kn / KN_PER_TONNE,
      rules: { over: 'hem flattening force', near: 'hem flattening force, margin' },
      advice:
        kind === 'closed'
          ? 'Leave the hem open, make shorter pieces, or close it on a stronger machine.'
          : 'Make shorter pieces, or the hem on a stronger machine.',
      note: beyondTable ? ' No printed table has this thickness: its nearest row is carried on.' : '',
    },
  ];
}

function wholeForce(load: Load, { lengthMm, units }: Asked, machine: Machine, tonnes: number): Found[] {
  if (load.tonnes * CHART_SPREAD <= tonnes) return [];
  const message = `${load.work} needs about ${formatReckonedTonnes(load.tonnes, units)} over ${formatLength(lengthMm, units)}; ${machine.name} has ${formatTonnes(tonnes, units)}.${load.note}`;
  return load.tonnes > tonnes
    ? [found(load.rules.over, message, load.advice)]
    : [found(load.rules.near, message, "Check the tool and machine makers' charts first.")];
}

/** A force that the brake has, on a piece too short for it: ram and bed would bend for good. */
function concentrated(load: Load, { lengthMm, units }: Asked, machine: Machine, tonnes: number): Found[] {
  const { betweenFramesMm, maxLengthMm, name } = machine;
  const bedMm = betweenFramesMm ?? maxLengthMm;
  if (bedMm === null) return [];
  const most = mostPerMm(tonnes, bedMm);
  const needs = load.tonnes / lengthMm;
  if (needs * CHART_SPREAD <= most) return [];
  const basis =
    betweenFramesMm === null
      ? 'the distance between its side frames is not on record, so its longest piece stands for it'
      : `the side frames are ${formatLength(betweenFramesMm, units)} apart`;
  return [
    found(
      needs > most && betweenFramesMm !== null ? 'concentrated load' : 'concentrated load, margin',
      `${load.work} needs about ${formatTonnesPerLength(needs, units)}; ${name} stands ${formatTonnesPerLength(most, units)} (${basis}).${load.note}`,
      betweenFramesMm === null
        ? 'Enter the distance between the side frames in Shop, Machines, and check the machine plate.'
        : load.advice,
    ),
  ];
}
