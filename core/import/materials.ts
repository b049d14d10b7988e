import { z } from 'zod';
import { gaugeLabel, name } from '../fields.ts';
import type { Gauge, Material, Metal } from '../material/material.ts';
import { gaugeLabelled, gaugeOf, usualMaterial } from '../material/usual-metals.ts';
import { rowName } from '../edit/row-name.ts';
import type { FormRow } from '../edit/command.ts';
import { sameContent } from '../shop/row-change.ts';
import type { Shop } from '../shop/state.ts';
import { formatThickness, type LengthUnits, type Units } from '../units/length.ts';
import type { FileFields } from './field.ts';
import type { ImportKind, JudgedRow, RowIssue } from './kind.ts';
import { LIST_WORDS } from './list-words.ts';
import { Codes, commandOf, numberIn, refusalsOf, textIn, type OfRow } from './list-rows.ts';
import { namesOf } from './names.ts';
import type { ReadRow } from './read-rows.ts';
import { plainWords } from './words.ts';

/** "24 ga", "#24" and "0,70 mm" are the labels 24 and 0.70. */
const label = z
  .string()
  .transform((text) =>
    text
      .trim()
      .replace(/^(?:#|no\.?\s*|ga(?:u?ge)?\.?\s*)/i, '')
      .replace(/\s*(?:ga(?:u?ge)?\.?|mm)$/i, '')
      .replace(',', '.'),
  )
  .pipe(gaugeLabel);

/** Words for the families in English, German, French and Spanish; common practice, no source. In names the first that fits counts. */
const FAMILIES = {
  stainless: [
    'stainless steel',
    'ss',
    'inox',
    'edelstahl',
    'acier inoxydable',
    'inoxydable',
    'acero inoxidable',
    'inoxidable',
  ],
  galvanized: [
    'galvanised',
    'galvanized steel',
    'galvanised steel',
    'galv',
    'verzinkt',
    'stahl verzinkt',
    'galvanise',
    'acier galvanise',
    'galvanizado',
    'acero galvanizado',
  ],
  aluminium: ['aluminum', 'alum', 'al', 'alu', 'aluminio'],
  steel: ['mild steel', 'stahl', 'acier', 'acero'],
} as const satisfies Readonly<Record<Metal, readonly string[]>>;

const fields: FileFields = {
  kind: 'materials',
  key: 'metal',
  fields: [
    { name: 'metal', sort: { is: 'text', schema: name }, needed: 'row', words: LIST_WORDS.metal },
    { name: 'code', sort: { is: 'text', schema: name }, needed: 'no', words: LIST_WORDS.code },
    { name: 'family', sort: { is: 'one-of', words: FAMILIES }, needed: 'no', words: LIST_WORDS.family },
    { name: 'gauge', sort: { is: 'text', schema: label }, needed: 'no', words: LIST_WORDS.gauge },
    { name: 'thickness', sort: { is: 'thickness' }, needed: 'no', words: LIST_WORDS.thickness },
  ],
};

/** A metal with the rows of the file that are its gauges. */
interface Gathered {
  readonly before: Material | null;
  readonly base: Material;
  readonly rows: { readonly row: ReadRow; readonly gauge: Gauge }[];
}

/** Files of metals, a row for each gauge; strength and weight of what is new are those of its family, and said. */
export const materialFiles: ImportKind = {
  fields: () => fields,
  judge(rows, { shop }) {
    const issues: RowIssue[] = [];
    const gathered = new Map<string, Gathered>();
    const refuse = (row: ReadRow, issue: OfRow): void => void issues.push({ ...issue, row: row.row });
    const names = namesOf(shop, []);
    const codes = new Codes(shop.material);
    for (const row of rows) {
      const said = textIn(row, 'code') ?? textIn(row, 'metal') ?? '';
      const before = names.find('material', said) ?? names.find('material', textIn(row, 'metal') ?? '');
      const key = before?.id ?? said.toLowerCase();
      const metal = gathered.get(key) ?? {
        before,
        base: before ? named(before, row) : newMetal(row, said, codes),
        rows: [],
      };
      const { base } = metal;
      if (base === null) {
        refuse(row, unknownFamily(row));
        continue;
      }
      const family = textIn(row, 'family');
      if (family !== undefined && family !== base.metal) {
        refuse(row, {
          field: 'family',
          reason: `${base.name} is ${base.metal}, not ${family}. Correct the cell, or the metal in Shop, Materials.`,
        });
        continue;
      }
      const gauge = gaugeIn(row, base, shop.settings.units);
      const own = metal.rows.find((one) => gauge !== null && one.gauge.label === gauge.label);
      if (gauge === null) refuse(row, noThickness(row, base));
      else if (own)
        refuse(row, {
          field: 'gauge',
          reason: `Row ${own.row.row} is gauge ${gauge.label} of ${base.name} already. Keep one of the rows.`,
        });
      else gathered.set(key, { ...metal, base, rows: [...metal.rows, { row, gauge }] });
    }
    const judged = new Map<number, JudgedRow>();
    const changed: FormRow[] = [];
    for (const metal of gathered.values()) judgeMetal(shop, metal, { judged, issues, changed });
    return { rows: judged, issues, notes: [], missing: [], command: commandOf(changed, []) };
  },
};

/** A metal that the file knows by its code has the file's name. */
const named = (before: Material, row: ReadRow): Material => ({
  ...before,
  name: textIn(row, 'code') === undefined ? before.name : (textIn(row, 'metal') ?? before.name),
});

interface Found {
  readonly judged: Map<number, JudgedRow>;
  readonly issues: RowIssue[];
  readonly changed: FormRow[];
}

const FIELD_OF = { id: 'code', name: 'metal', metal: 'family', gauges: 'gauge' };

/** One metal with all its rows: gauges that are there are changed, others added; none goes. */
function judgeMetal(shop: Shop, { before, base, rows }: Gathered, { judged, issues, changed }: Found): void {
  const own = new Map((before?.gauges ?? []).map((gauge) => [gauge.label, gauge]));
  for (const { gauge } of rows) own.set(gauge.label, gauge);
  const after: Material = {
    ...base,
    gauges: [...own.values()].sort((a, b) => b.thicknessMm - a.thicknessMm),
  };
  const refused = refusalsOf(shop, { kind: 'material', fieldOf: FIELD_OF }, after);
  for (const { row } of rows) issues.push(...refused.map((issue) => ({ ...issue, row: row.row })));
  if (refused.length > 0) return;
  for (const { row, gauge } of rows) {
    const old = before?.gauges.find(({ label: text }) => text === gauge.label);
    const isRenamed = before !== null && before.name !== base.name;
    const isThicker = old !== undefined && old.thicknessMm !== gauge.thicknessMm;
    judged.set(row.row, {
      state: !old ? 'new' : isThicker || isRenamed ? 'changed' : 'known',
      subject: `gauge ${gauge.label} of ${rowName('material', base.id)}`,
      words: before ? '' : `Strength and K-factor as usual for ${base.metal}; correct them by your own.`,
      was: {
        ...(isThicker ? { thickness: formatThickness(old.thicknessMm, shop.settings) } : {}),
        ...(isRenamed ? { metal: before.name } : {}),
      },
    });
  }
  if (!before || !sameContent(before, after)) changed.push({ kind: 'material', row: after });
}

/** A new metal with what is usual for its family; null: no word says which that is. */
function newMetal(row: ReadRow, said: string, codes: Codes): Material | null {
  const own = textIn(row, 'metal') ?? said;
  const family = (textIn(row, 'family') as Metal | undefined) ?? familyNamed(own);
  return family
    ? {
        ...usualMaterial(family, []),
        id: textIn(row, 'code') === undefined ? codes.made(said) : codes.for(said),
        name: own,
      }
    : null;
}

function familyNamed(text: string): Metal | undefined {
  const words = ` ${plainWords(text)} `;
  return (Object.keys(FAMILIES) as Metal[]).find((family) =>
    [family, ...FAMILIES[family]].some((word) => words.includes(` ${word} `)),
  );
}

const unknownFamily = (row: ReadRow): OfRow => ({
  field: row.cells.some(({ field }) => field === 'family') ? 'family' : 'metal',
  reason: `Which family “${textIn(row, 'metal') ?? ''}” belongs to is not said. Write ${Object.keys(FAMILIES).join(', ')} in a column “family”, or in the name.`,
});

/** The gauge of a row: its thickness as written, as it stands in the shop, or as published for the label; null: unknown. */
function gaugeIn(row: ReadRow, { metal, gauges }: Material, units: LengthUnits): Gauge | null {
  const [said, thicknessMm] = [textIn(row, 'gauge'), numberIn(row, 'thickness') ?? millimetresIn(row)];
  const own = gauges.find((gauge) =>
    said === undefined
      ? thicknessMm !== undefined && sameThickness(gauge.thicknessMm, thicknessMm, units)
      : gauge.label === said,
  );
  if (own && (thicknessMm === undefined || sameThickness(own.thicknessMm, thicknessMm, units))) return own;
  if (thicknessMm !== undefined)
    return { ...own, ...gaugeOf(metal, said ?? own?.label ?? labelOf(thicknessMm, units), thicknessMm) };
  return said === undefined ? null : gaugeLabelled(metal, said, units);
}

/** A file tells no thickness finer than tables print it. */
const sameThickness = (a: number, b: number, units: LengthUnits): boolean =>
  formatThickness(a, labelStyle(units)) === formatThickness(b, labelStyle(units));

/** Thicknesses are kept to a micron. */
const tidy = (mm: number): number => Math.round(mm * 1000) / 1000;

/** A label in millimetres is its thickness. */
function millimetresIn(row: ReadRow): number | undefined {
  const text = row.cells.find(({ field }) => field === 'gauge')?.text ?? '';
  const value = Number(textIn(row, 'gauge'));
  return /mm\s*$/i.test(text) && value > 0 ? value : undefined;
}

/** Labels of gauges are written with points in every shop: orders name gauges by them. */
const labelStyle = (units: LengthUnits): Units => ({ units, decimals: 'point' });

/** What a thickness without a gauge is called. */
const labelOf = (thicknessMm: number, units: LengthUnits): string =>
  units === 'in'
    ? formatThickness(thicknessMm, labelStyle(units)).replace(/^0|0? in$/g, '')
    : String(tidy(thicknessMm));

const noThickness = (row: ReadRow, { name: metal }: Material): OfRow => {
  const said = textIn(row, 'gauge');
  if (said === undefined)
    return { field: null, reason: 'It has neither a gauge nor a thickness. Write one of them.' };
  return {
    field: 'gauge',
    reason: `How thick gauge ${said} of ${metal} is stands in no published table. Write its thickness.`,
  };
};
