import { asStock, publishedGauges } from '../../../../core/material/gauges.ts';
import type { Gauge, Metal } from '../../../../core/material/material.ts';
import { withoutKey } from '../../../form/list.ts';

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

/** The gauge with its house V; null: none, so that the usual rule stands. */
export const withHouseV = (gauge: Gauge, vMm: number | null): Gauge =>
  vMm === null ? withoutKey(gauge, 'vMm') : { ...gauge, vMm };
