import type { Sheet } from '../material/material.ts';
import { newSheet, type SheetMetal, type SheetSize } from '../material/usual-sheets.ts';
import { code } from '../fields.ts';
import type { Shop } from '../shop/state.ts';
import { formatCutLength, formatLength } from '../units/length.ts';
import { formatAmount } from '../units/money.ts';
import type { Field, FileFields } from './field.ts';
import type { ImportKind } from './kind.ts';
import { LIST_WORDS } from './list-words.ts';
import { Codes, judgeList, numberIn, textIn, type Becomes, type ListOf } from './list-rows.ts';
import type { ReadRow } from './read-rows.ts';
import { WORDS } from './vocabulary.ts';

/** What a sheet is of: the same in files of sheet sizes and of stock. The metal goes first: gauges are read against it. */
export const sheetMetalFields = (
  needed: (field: 'material' | 'gauge' | 'colour') => Field['needed'],
): Field[] => [
  {
    name: 'material',
    sort: { is: 'named', kind: 'material' },
    needed: needed('material'),
    words: WORDS.material,
  },
  { name: 'gauge', sort: { is: 'gauge' }, needed: needed('gauge'), words: WORDS.gauge },
  { name: 'colour', sort: { is: 'named', kind: 'colour' }, needed: needed('colour'), words: WORDS.colour },
];

export const sheetCode: Field = {
  name: 'code',
  sort: { is: 'text', schema: code },
  needed: 'no',
  words: LIST_WORDS.code,
};

const fields = ({ material }: Shop): FileFields => ({
  kind: 'sheets',
  key: 'width',
  fields: [
    sheetCode,
    ...sheetMetalFields((field) => (field === 'material' && material.length === 1 ? 'no' : 'row')),
    { name: 'width', sort: { is: 'length' }, needed: 'row', words: LIST_WORDS.width },
    { name: 'length', sort: { is: 'length' }, needed: 'row', words: LIST_WORDS.sheetLength },
    { name: 'trim', sort: { is: 'length', zero: true }, needed: 'no', words: LIST_WORDS.trim },
    { name: 'price', sort: { is: 'money' }, needed: 'no', words: LIST_WORDS.price },
  ],
});

const sheets: ListOf<'sheet'> = {
  kind: 'sheet',
  fieldOf: {
    id: 'code',
    materialId: 'material',
    gauge: 'gauge',
    colour: 'colour',
    colourId: 'colour',
    widthMm: 'width',
    lengthMm: 'length',
    trimMm: 'trim',
    costCents: 'price',
  },
  cells: ({ settings, material, colour }, row) => ({
    material: material.find(({ id }) => id === row.materialId)?.name ?? row.materialId,
    gauge: row.gauge,
    colour: colour.find(({ id }) => id === row.colourId)?.name ?? row.colourId,
    width: formatCutLength(row.widthMm, settings),
    length: formatCutLength(row.lengthMm, settings),
    trim: formatLength(row.trimMm, settings),
    price: formatAmount(row.costCents, settings.decimals),
  }),
};

/** Files of sheet sizes, each known by its code, or by its metal, gauge, colour and size. */
export const sheetFiles: ImportKind = {
  fields,
  judge(rows, context) {
    const { shop } = context;
    const codes = new Codes(shop.sheet);
    const find = sheetFinder(shop.sheet);
    const becomes = rows.flatMap((row): Becomes<'sheet'>[] => {
      const metal = metalIn(shop, row);
      if (!metal) return [];
      const size = { widthMm: numberIn(row, 'width') ?? 0, lengthMm: numberIn(row, 'length') ?? 0 };
      const said = textIn(row, 'code');
      const before = find(said, metal, size);
      const base = before ?? newSheet(metal, size, shop.settings.units, []);
      const exact = [...Object.values(metal), size.widthMm.toFixed(1), size.lengthMm.toFixed(1)].join(' ');
      const after: Sheet = {
        ...base,
        ...metal,
        ...(before && sameSize(before, size) ? {} : size),
        id: before?.id ?? said ?? codes.made(base.id, exact),
        trimMm: numberIn(row, 'trim') ?? base.trimMm,
        costCents: numberIn(row, 'price') ?? base.costCents,
      };
      const words =
        before || after.costCents > 0 ? '' : 'No price is known of it: its waste costs nothing in a plan.';
      return [{ row, before, after, words, others: [] }];
    });
    return judgeList(sheets, becomes, context, { issues: [] });
  },
};

/** What a row's sheet is of; null: its cells do not say all of it. */
export function metalIn({ material }: Shop, row: ReadRow): SheetMetal | null {
  const materialId = textIn(row, 'material') ?? (material.length === 1 ? material[0]?.id : undefined);
  const [gauge, colourId] = [textIn(row, 'gauge'), textIn(row, 'colour')];
  return materialId && gauge && colourId ? { materialId, gauge, colourId } : null;
}

/** A sawn inch has more digits than a file keeps; sizes closer than this are the same. */
const SAME_SIZE_MM = 0.05;
export const sameSize = (a: SheetSize, b: SheetSize): boolean =>
  Math.abs(a.widthMm - b.widthMm) < SAME_SIZE_MM && Math.abs(a.lengthMm - b.lengthMm) < SAME_SIZE_MM;

export const sameMetal = (a: SheetMetal, b: SheetMetal): boolean =>
  a.materialId === b.materialId && a.gauge === b.gauge && a.colourId === b.colourId;

/** Finds a sheet size by its code; without a code the one of that metal and size. */
function sheetFinder(sheets: readonly Sheet[]) {
  const byCode = new Map(sheets.map((sheet) => [sheet.id.toLowerCase(), sheet]));
  const byMetal = new Map<string, Sheet[]>();
  const key = ({ materialId, gauge, colourId }: SheetMetal): string =>
    [materialId, gauge, colourId].join(' ');
  for (const sheet of sheets) {
    const same = byMetal.get(key(sheet)) ?? [];
    byMetal.set(key(sheet), same);
    if (sheet.form === 'sheet') same.push(sheet);
  }
  return (said: string | undefined, metal: SheetMetal, size: SheetSize): Sheet | null => {
    if (said !== undefined) return byCode.get(said.toLowerCase()) ?? null;
    // A file of sizes speaks of what is bought, not of one lot of it.
    const found = byMetal.get(key(metal))?.filter((one) => sameSize(one, size)) ?? [];
    return found.find(({ lot }) => lot === '') ?? found[0] ?? null;
  };
}
