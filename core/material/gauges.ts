import type { Gauge, Metal } from './material.ts';
import { inchesToMm } from '../units/length.ts';
import { KG_M2_PER_LB_FT2 } from '../units/weight.ts';

/**
 * Published gauge tables, made from the rules behind them and rounded, as the tables are, to 0.0001 in.
 * A gauge number means another thickness in each metal, and prefinished stock is ordered to a stated decimal: these
 * are starting values for the shop's own gauge records.
 */

/** Ounces a square foot, gauge 7 first. Source: US Standard Gauge for sheet and plate, 15 U.S.C. 206. */
const OUNCES = [
  120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32, 28, 24, 22, 20, 18, 16, 14, 12, 11, 10, 9, 8,
] as const;
const FIRST_GAUGE = 7;

/** 15 U.S.C. 206 pairs 160 oz/ft² with 1/4 in: 40 lb/ft² an inch. Stainless decimals still follow it (from memory). */
const STANDARD_GAUGE_LB_PER_IN = 40;
/** Manufacturers' Standard Gauge for uncoated carbon steel: 41.82 lb/ft² an inch. */
const STEEL_LB_PER_IN = 41.82;
/** A galvanized gauge is the steel gauge plus 2.5 oz/ft² of coating, taken as steel (published galvanized tables). */
const COATING_OUNCES = 2.5;
/** Weight charts: 42.0 lb/ft² an inch for stainless, 14.2 for aluminium 3003 (from memory). */
const STAINLESS_LB_PER_IN = 42;
export const ALUMINIUM_LB_PER_IN = 14.2;

interface Row {
  readonly inches: number;
  readonly lbPerFt2: number;
}

const ouncesOf = (gauge: number): number => OUNCES[gauge - FIRST_GAUGE] ?? 0;

const RULES: Readonly<Record<Metal, (gauge: number) => Row>> = {
  steel: (gauge) => {
    const lbPerFt2 = ouncesOf(gauge) / 16;
    return { inches: lbPerFt2 / STEEL_LB_PER_IN, lbPerFt2 };
  },
  galvanized: (gauge) => {
    const lbPerFt2 = (ouncesOf(gauge) + COATING_OUNCES) / 16;
    return { inches: lbPerFt2 / STEEL_LB_PER_IN, lbPerFt2 };
  },
  stainless: (gauge) => {
    const inches = ouncesOf(gauge) / 16 / STANDARD_GAUGE_LB_PER_IN;
    return { inches, lbPerFt2: inches * STAINLESS_LB_PER_IN };
  },
  /** Brown & Sharpe gauge: a geometric series from 0.46 in (0000) to 0.005 in (36); ASTM B258. */
  aluminium: (gauge) => {
    const inches = 0.005 * 92 ** ((36 - gauge) / 39);
    return { inches, lbPerFt2: inches * ALUMINIUM_LB_PER_IN };
  },
};

function rowOf(metal: Metal, gauge: number): Gauge {
  const { inches, lbPerFt2 } = RULES[metal](gauge);
  return {
    label: String(gauge),
    thicknessMm: inchesToMm(Math.round(inches * 10_000) / 10_000),
    kgPerM2: lbPerFt2 * KG_M2_PER_LB_FT2,
  };
}

/** The published table of a metal, gauges 7 (thick) to 30 (thin): thickness in mm, weight in kg/m². */
export const publishedGauges = (metal: Metal): Gauge[] => OUNCES.map((_, i) => rowOf(metal, FIRST_GAUGE + i));

/** A published gauge rounded as a stock record keeps it: thickness to a micron, weight to a gram a square metre. */
export const asStock = ({ label, thicknessMm, kgPerM2 }: Gauge): Gauge => ({
  label,
  thicknessMm: Math.round(thicknessMm * 1000) / 1000,
  kgPerM2: Math.round(kgPerM2 * 1000) / 1000,
});
