import { name, note } from '../fields.ts';
import { isOrderOf } from '../part/bend-steps.ts';
import { readProfile, writeProfile } from '../part/notation.ts';
import type { Part } from '../part/part.ts';
import type { Profile } from '../part/profile.ts';
import { formatLength } from '../units/length.ts';
import type { FileFields } from './field.ts';
import type { ImportKind, RowIssue } from './kind.ts';
import { LIST_WORDS } from './list-words.ts';
import { Codes, judgeList, numberIn, otherNames, textIn, type Becomes, type ListOf } from './list-rows.ts';
import { namesOf } from './names.ts';
import { columnsOf, profileColumns, profileInColumns } from './profile-columns.ts';
import { PROFILE_STYLE } from './read-cell.ts';
import type { ReadRow } from './read-rows.ts';
import { WORDS } from './vocabulary.ts';

const fields: FileFields = {
  kind: 'parts',
  key: 'code',
  fields: [
    { name: 'code', sort: { is: 'text', schema: name }, needed: 'row', words: LIST_WORDS.partCode },
    { name: 'name', sort: { is: 'text', schema: name }, needed: 'no', words: LIST_WORDS.partName },
    { name: 'profile', sort: { is: 'profile' }, needed: 'no', words: LIST_WORDS.profile },
    {
      name: 'length',
      sort: { is: 'length' },
      needed: 'no',
      words: [...WORDS.length, ...LIST_WORDS.pieceLength],
    },
    ...profileColumns,
    { name: 'note', sort: { is: 'text', schema: note }, needed: 'no', words: WORDS.note },
  ],
};

const parts: ListOf<'part'> = {
  kind: 'part',
  fieldOf: {
    id: 'code',
    name: 'name',
    profile: 'profile',
    family: 'profile',
    lengthMm: 'length',
    note: 'note',
  },
  cells: ({ settings }, row) => ({
    name: row.name,
    profile: writeProfile(row.profile, settings),
    length: formatLength(row.lengthMm, settings),
    note: row.note,
    ...columnsOf(row.profile, settings),
  }),
};

/**
 * Files of parts, each known by its code; the cross-section in one cell, in the notation of core/part/notation.ts, or in
 * columns of its own.
 */
export const partFiles: ImportKind = {
  fields: () => fields,
  judge(rows, context) {
    const { shop } = context;
    const names = namesOf(shop, []);
    const codes = new Codes(shop.part);
    const issues: RowIssue[] = [];
    const becomes = rows.flatMap((row): Becomes<'part'>[] => {
      const said = textIn(row, 'code') ?? '';
      const before = names.find('part', said);
      const columns = profileInColumns(row, shop.settings);
      if (columns && 'issues' in columns) {
        issues.push(...columns.issues.map((issue) => ({ ...issue, row: row.row })));
        return [];
      }
      const [text, shape] = [profileIn(row), columns?.profile];
      if (text && shape) {
        const reason = 'The profile is there twice, as text and in columns. Empty one of them.';
        issues.push({ row: row.row, field: 'profile', reason });
        return [];
      }
      const profile = text ?? shape ?? before?.profile;
      const lengthMm = numberIn(row, 'length') ?? before?.lengthMm;
      if (profile === undefined)
        issues.push({
          row: row.row,
          field: 'profile',
          reason: `Part ${said} is new, and the row has no profile. Write one, like in: 4 1/2; 90 up; 2.`,
        });
      if (lengthMm === undefined)
        issues.push({
          row: row.row,
          field: 'length',
          reason: `Part ${said} is new, and the row has no usual length. Write one; an order’s line may ask for another.`,
        });
      if (profile === undefined || lengthMm === undefined) return [];
      const after = partOf(row, { before, profile, lengthMm, id: before?.id ?? codes.for(said) });
      return [{ row, before, after, words: '', others: otherNames('part', said, after) }];
    });
    return judgeList(parts, becomes, context, { issues });
  },
};

function profileIn(row: ReadRow): Profile | undefined {
  const read = readProfile(textIn(row, 'profile') ?? '', PROFILE_STYLE);
  return read.ok ? read.value : undefined;
}

interface Shape {
  readonly before: Part | null;
  readonly id: string;
  readonly profile: Profile;
  readonly lengthMm: number;
}

/** The part as its row says; an own bend order goes where the profile has other steps. */
function partOf(row: ReadRow, { before, id, profile, lengthMm }: Shape): Part {
  const own = before?.bendOrder ?? null;
  return {
    id,
    name: textIn(row, 'name') ?? before?.name ?? textIn(row, 'code') ?? id,
    profile,
    lengthMm,
    bendOrder: own && isOrderOf(profile, own) ? own : null,
    family: before?.family ?? null,
    extraBlanks: before?.extraBlanks ?? null,
    steps: before?.steps ?? [],
    note: textIn(row, 'note') ?? before?.note ?? '',
    revision: before?.revision ?? 0,
  };
}
