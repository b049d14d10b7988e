import { publishedGauges } from '../../../../core/material/gauges.ts';
import type { Gauge, Metal } from '../../../../core/material/material.ts';

/** A published gauge rounded as a stock record keeps it: thickness to a micron, weight to a gram a square metre. */
const asStock = ({ label, thicknessMm, kgPerM2 }: Gauge): Gauge => ({
  label,
  thicknessMm: Math.round(thicknessMm * 1000) / 1000,
  kgPerM2: Math.round(kgPerM2 * 1000) / 1000,
});

/** The published gauges that the list lacks, thick to thin. */
export const missingGauges = (metal: Metal, gauges: readonly Gauge[]): Gauge[] =>
  publishedGauges(metal)
    .filter(({ label }) => !gauges.some((gauge) => gauge.label === label))
    .map(asStock);

/** The gauge with the published figures of its number, or as it is when no table has it. */
export function fromTable(metal: Metal, gauge: Gauge): Gauge {
  const found = publishedGauges(metal).find(({ label }) => label === gauge.label);
  return found ? asStock(found) : gauge;
}
