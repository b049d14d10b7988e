import type { Gauge, Material, MeasuredDeduction } from '../material/material.ts';
import { houseVMm, sameV } from './house-v.ts';
import type { GirthRule } from './profile.ts';
import { airBendRadiusMm } from './radius.ts';
import type { Tool } from './tool.ts';
import { unitsOf, type Units } from '../units/length.ts';

/** A deduction that the shop measured in the metal at hand, for one angle. */
export type Measured = Pick<MeasuredDeduction, 'angle' | 'deductionMm'>;

/** What turns a drawn profile into a strip of metal. */
export interface Forming {
  readonly thicknessMm: number;
  readonly kFactor: number;
  /** Inside radius for bends that name none; left out: one thickness. */
  readonly radiusMm?: number;
  /** The shop's own deductions, which beat the formula; left out: none. */
  readonly measured?: readonly Measured[];
  /** What sentences about the strip are written in. */
  readonly units: Units;
}

/** How a shop works out its blanks. */
export interface BlankBasis {
  readonly girthRule: GirthRule;
  /** The shop's brake tools: a gauge without a house V takes the nearest of their dies. */
  readonly tools: readonly Tool[];
  /** The V that blanks are cut for where there are no dies on record; null when the shop has no brake yet. */
  readonly dieOpeningMm: number | null;
  /** What sentences about its parts are written in. */
  readonly units: Units;
}

/**
 * A blank is cut before a brake is chosen, so it is worked out for the house V of its gauge, the same on every brake
 * (`houseVMm`); without dies on record for the V usually set up on the shop's first brake. A finding speaks up where another
 * brake's V was measured and differs (core/limits/brake-limits.ts).
 */
export const blankBasisOf = (shop: {
  readonly settings: Units & { readonly girthRule: GirthRule };
  readonly machine: readonly { readonly stage: string; readonly dieOpeningMm: number | null }[];
  readonly tool: readonly Tool[];
}): BlankBasis => ({
  girthRule: shop.settings.girthRule,
  tools: shop.tool,
  dieOpeningMm: shop.machine.find(({ stage }) => stage === 'brake')?.dieOpeningMm ?? null,
  units: unitsOf(shop.settings),
});

/** Angles this close are the same bend. */
const SAME = 0.05;

/** The deductions measured in a gauge that hold for a V: those of that V before those of any. */
const measuredIn = (
  { deductions }: Pick<Material, 'deductions'>,
  gauge: Pick<Gauge, 'label'>,
  dieOpeningMm: number | null,
): MeasuredDeduction[] =>
  deductions
    .filter(
      (d) => d.gauge === gauge.label && (d.dieOpeningMm === null || sameV(d.dieOpeningMm, dieOpeningMm)),
    )
    .toSorted((a, b) => Number(a.dieOpeningMm === null) - Number(b.dieOpeningMm === null));

/** What of a metal decides how it forms. */
type FormedMetal = Pick<Material, 'metal' | 'tensileMpa' | 'kFactor' | 'deductions'>;

/** A metal as the shop forms it, in the V of its gauge. */
export const formingOf = (
  material: FormedMetal,
  gauge: Pick<Gauge, 'label' | 'thicknessMm' | 'vMm'>,
  basis: BlankBasis,
): Forming => formingIn(material, gauge, houseVMm(gauge, basis), basis);

/** A metal as it forms in a V; null: no V is known, and an open radius is one thickness. */
export const formingIn = (
  material: FormedMetal,
  gauge: Pick<Gauge, 'label' | 'thicknessMm'>,
  dieOpeningMm: number | null,
  { girthRule, units }: Pick<BlankBasis, 'girthRule' | 'units'>,
): Forming => ({
  thicknessMm: gauge.thicknessMm,
  kFactor: material.kFactor,
  measured: measuredIn(material, gauge, dieOpeningMm),
  ...(girthRule === 'computedByV' && dieOpeningMm !== null
    ? { radiusMm: airBendRadiusMm(dieOpeningMm, material) }
    : {}),
  units,
});

/** The shop's own deduction for a bend of an angle; null: none was measured, the formula stands. */
export const measuredFor = ({ measured }: Forming, angle: number): number | null =>
  measured?.find((m) => Math.abs(m.angle - angle) < SAME)?.deductionMm ?? null;
