import { newColour } from '../material/usual-colours.ts';
import { hexColour, name } from '../fields.ts';
import { z } from 'zod';
import type { FileFields } from './field.ts';
import type { ImportKind } from './kind.ts';
import { LIST_WORDS } from './list-words.ts';
import { Codes, judgeList, otherNames, textIn, type Becomes, type ListOf } from './list-rows.ts';
import { namesOf } from './names.ts';

const swatch = z
  .string()
  .transform((text) => `#${text.trim().toLowerCase().replace(/^#/, '')}`)
  .pipe(hexColour);

const fields: FileFields = {
  kind: 'colours',
  key: 'name',
  fields: [
    { name: 'code', sort: { is: 'text', schema: name }, needed: 'no', words: LIST_WORDS.colourCode },
    { name: 'name', sort: { is: 'text', schema: name }, needed: 'row', words: LIST_WORDS.colourName },
    { name: 'swatch', sort: { is: 'text', schema: swatch }, needed: 'no', words: LIST_WORDS.swatch },
  ],
};

const colours: ListOf<'colour'> = {
  kind: 'colour',
  fieldOf: { id: 'code', name: 'name', hex: 'swatch' },
  cells: (_, row) => ({ code: row.id, name: row.name, swatch: row.hex }),
};

/** Files of colours, each known by its code, or by its name where it has none. */
export const colourFiles: ImportKind = {
  fields: () => fields,
  judge(rows, context) {
    const { shop } = context;
    const names = namesOf(shop, []);
    const codes = new Codes(shop.colour);
    const becomes = rows.map((row): Becomes<'colour'> => {
      const [own, said] = [textIn(row, 'name') ?? '', textIn(row, 'code')];
      const before = (said && names.find('colour', said)) || names.find('colour', own);
      const id = before?.id ?? (said === undefined ? codes.made(own) : codes.for(said));
      const usual = before ?? { ...newColour(own, []), id };
      const after = { ...usual, name: own, hex: textIn(row, 'swatch') ?? usual.hex };
      return { row, before, after, words: '', others: otherNames('colour', said, after) };
    });
    return judgeList(colours, becomes, context, { issues: [] });
  },
};
