import { inchesToMm, type LengthUnits } from '../units/length.ts';
import { METAL_DEFAULTS } from './defaults.ts';
import { ALUMINIUM_LB_PER_IN, asStock, publishedGauges } from './gauges.ts';
import type { Gauge, Material, Metal } from './material.ts';
import { KG_M2_PER_LB_FT2 } from '../units/weight.ts';

/** Gauge numbers that trim shops usually keep of each metal, thick to thin. Common practice, no source. */
const GAUGE_NUMBERS: Readonly<Record<Exclude<Metal, 'aluminium'>, readonly number[]>> = {
  galvanized: [20, 22, 24, 26, 28],
  steel: [16, 18, 20, 22],
  stainless: [20, 22, 24, 26],
};
/** Aluminium is ordered by the decimal, in thousandths of an inch. Common practice, no source. */
const ALUMINIUM_THOUSANDTHS = [63, 50, 40, 32, 24, 19];

/** Thicknesses in millimetres that metric trim shops usually keep. Common practice, no source. */
const METRIC_MM: Readonly<Record<Metal, readonly number[]>> = {
  galvanized: [1.5, 1.25, 1, 0.8, 0.7, 0.6, 0.5],
  steel: [2, 1.5, 1.25, 1, 0.8],
  stainless: [1.5, 1, 0.8, 0.6, 0.5],
  aluminium: [2, 1.5, 1.2, 1, 0.8, 0.7],
};
/** Kilograms a square metre and millimetre of thickness: nominal densities (from memory). */
const KG_PER_M2_MM: Readonly<Record<Metal, number>> = {
  galvanized: 7.85,
  steel: 7.85,
  stainless: 7.9,
  aluminium: 2.7,
};

const NAMES: Readonly<Record<Metal, Pick<Material, 'id' | 'name'>>> = {
  galvanized: { id: 'galv', name: 'Galvanized steel' },
  steel: { id: 'steel', name: 'Steel' },
  stainless: { id: 'stainless', name: 'Stainless steel' },
  aluminium: { id: 'alum', name: 'Aluminium' },
};

const inThousandths = (thousandths: number): Gauge => ({
  label: `.${String(thousandths).padStart(3, '0')}`,
  thicknessMm: inchesToMm(thousandths / 1000),
  kgPerM2: (thousandths / 1000) * ALUMINIUM_LB_PER_IN * KG_M2_PER_LB_FT2,
});

const inMillimetres = (metal: Metal, thicknessMm: number): Gauge => ({
  label: Number.isInteger(thicknessMm) ? thicknessMm.toFixed(1) : String(thicknessMm),
  thicknessMm,
  kgPerM2: thicknessMm * KG_PER_M2_MM[metal],
});

/** A published weight holds for a thickness that is the table's own to so much. */
const SAME_THICKNESS_MM = 0.005;

/** A gauge of that label and thickness: its weight is the published one of the label, else by nominal density. */
export function gaugeOf(metal: Metal, label: string, thicknessMm: number): Gauge {
  const published = publishedGauges(metal).find((gauge) => gauge.label === label);
  const same = published && Math.abs(published.thicknessMm - thicknessMm) <= SAME_THICKNESS_MM;
  return asStock({
    label,
    thicknessMm,
    kgPerM2: same ? published.kgPerM2 : thicknessMm * KG_PER_M2_MM[metal],
  });
}

/** The gauge that a label alone names: one that trim shops usually keep, or a published one; null: none. */
export const gaugeLabelled = (metal: Metal, label: string, units: LengthUnits): Gauge | null =>
  usualGauges(metal, units).find((gauge) => gauge.label === label) ??
  publishedGauges(metal)
    .map(asStock)
    .find((gauge) => gauge.label === label) ??
  null;

/** The thickness classes to begin with, thick to thin: gauges in an inch shop, millimetres in a metric one. */
export function usualGauges(metal: Metal, units: LengthUnits): Gauge[] {
  if (units === 'mm') return METRIC_MM[metal].map((mm) => asStock(inMillimetres(metal, mm)));
  if (metal === 'aluminium') return ALUMINIUM_THOUSANDTHS.map((of) => asStock(inThousandths(of)));
  const numbers = GAUGE_NUMBERS[metal].map(String);
  return publishedGauges(metal)
    .filter(({ label }) => numbers.includes(label))
    .map(asStock);
}

/** A metal with usual strength and K-factor (core/material/defaults.ts) and the gauges given. */
export const usualMaterial = (metal: Metal, gauges: readonly Gauge[]): Material => ({
  ...NAMES[metal],
  metal,
  tensileMpa: METAL_DEFAULTS[metal].tensileMpa,
  temper: null,
  kFactor: METAL_DEFAULTS[metal].kFactor,
  gauges,
  deductions: [],
  revision: 0,
});
