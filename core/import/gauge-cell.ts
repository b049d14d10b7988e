import type { Material } from '../material/material.ts';
import { formatThickness, parseLength, unitNamed } from '../units/length.ts';
import { readingsOf } from '../units/number.ts';
import { gaugeChoices } from './names.ts';
import type { CellContext, CellRead, ColumnStyle } from './cell-read.ts';

/** "24 ga", "#24", "24 gauge", "No. 24", "Ga 24" name a label, never a thickness. */
const MARKED = /^(?:#|no\.?\s*|ga(?:u?ge)?\.?\s*)?(.+?)(?:\s*ga(?:u?ge|\.)?)?$/i;

/**
 * The gauge that a cell means: a label of the row's material, or a thickness that is one gauge's to the last place in
 * which thicknesses are written. Where neither is one gauge, or both are and differ, it is asked.
 */
export function readGauge(text: string, style: ColumnStyle, { names, material }: CellContext): CellRead {
  if (!material) return { is: 'later' };
  const said = names.said('gauge', text);
  if (said !== null && material.gauges.some(({ label }) => label === said))
    return { is: 'read', value: said, shows: said };
  const bare = (MARKED.exec(text)?.[1] ?? text).trim();
  const labels = labelled(material, bare);
  const length = parseLength(text, { ...style, units: style.unit });
  const meanings = length.ok ? undefined : length.issues[0]?.meanings;
  if (meanings && labels.length === 0) return { is: 'open', meanings };
  const thickness = length.ok && mayBeThickness(text, style) ? length.value : null;
  const thick = thickness === null ? [] : ofThickness(material, thickness, unitIn(text) ?? style.unit);
  const isFigure = style.thickness && bare === text;
  const [label, ...others] = new Set(isFigure ? [...thick, ...labels] : labels.length > 0 ? labels : thick);
  if (label !== undefined && others.length === 0) return { is: 'read', value: label, shows: label };
  const mayBeOne = label !== undefined || !/\d/.test(bare) || isNear(material, thickness);
  if (mayBeOne) return { is: 'unknown', what: 'gauge', choices: gaugeChoices(material) };
  const has = material.gauges.map((gauge) => gauge.label).join(', ');
  return { is: 'wrong', reason: `${material.name} has no gauge “${text}”. It has ${has}.` };
}

/** Makers state another thickness than a table by up to so much of it (common practice, no source). */
const NOMINAL = 0.1;

/** Whether a thickness may be the nominal one of a gauge: what is further off is another sheet, whatever anyone says. */
const isNear = ({ gauges }: Material, thicknessMm: number | null): boolean =>
  thicknessMm !== null &&
  gauges.some((gauge) => Math.abs(gauge.thicknessMm - thicknessMm) <= NOMINAL * gauge.thicknessMm);

/** Labels as they are written, or ".040" for a spreadsheet's "0.04". */
function labelled({ gauges }: Material, bare: string): string[] {
  const same = gauges.filter(({ label }) => label.toLowerCase() === bare.toLowerCase());
  if (same.length > 0) return same.map(({ label }) => label);
  const [value, ...more] = new Set(readingsOf(bare).map((one) => one.value));
  if (value === undefined || more.length > 0) return [];
  return gauges.flatMap(({ label }) => (label.includes('.') && Number(label) === value ? [label] : []));
}

/** A bare whole number is a gauge number unless the heading speaks of thickness. */
const mayBeThickness = (text: string, { thickness }: ColumnStyle): boolean =>
  thickness || unitIn(text) !== null || /[.,]/.test(text);

/** The unit behind the figure. */
const unitIn = (text: string): ReturnType<typeof unitNamed> =>
  unitNamed(/[a-z"']+\.?$/i.exec(text.trim())?.[0] ?? '');

const ofThickness = ({ gauges }: Material, thicknessMm: number, unit: string): string[] => {
  const units = { units: unit === 'in' || unit === 'ft' ? 'in' : 'mm', decimals: 'point' } as const;
  const written = formatThickness(thicknessMm, units);
  return gauges.flatMap((gauge) =>
    formatThickness(gauge.thicknessMm, units) === written ? [gauge.label] : [],
  );
};
