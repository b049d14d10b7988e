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
  const thick =
    length.ok && mayBeThickness(text, style)
      ? ofThickness(material, length.value, unitIn(text) ?? style.unit)
      : [];
  const preferred = style.thickness && bare === text ? [thick, labels] : [labels, thick];
  const found = new Set(preferred.flat());
  const [first = []] = preferred;
  if (found.size === 1 || (first.length === 1 && !style.thickness)) {
    const [label] = first.length === 1 ? first : [...found];
    if (label !== undefined) return { is: 'read', value: label, shows: label };
  }
  return { is: 'unknown', what: 'gauge', choices: gaugeChoices(material) };
}

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
  const units = unit === 'in' || unit === 'ft' ? 'in' : 'mm';
  const written = formatThickness(thicknessMm, units);
  return gauges.flatMap((gauge) =>
    formatThickness(gauge.thicknessMm, units) === written ? [gauge.label] : [],
  );
};
