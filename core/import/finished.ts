import { shortStageName, STAGES } from '../part/stage.ts';
import { sameContent } from '../shop/row-change.ts';
import { lineOfOperation, operationId, stageOfOperation } from '../shop/order.ts';
import { operationRecord as recordSchema, type OperationRecord } from '../shop/plan.ts';
import type { Shop } from '../shop/state.ts';
import { DAY } from '../units/duration.ts';
import { z } from 'zod';
import type { Field, FileFields, Sort } from './field.ts';
import type { ImportKind, JudgeContext, JudgedRow, RowIssue } from './kind.ts';
import type { ReadRow } from './read-rows.ts';
import { WORDS } from './vocabulary.ts';

/** What a file of finished operations can say, our own names. The last five may be left out. */
const COLUMNS = [
  'operation',
  'machine',
  'part',
  'material',
  'gauge',
  'colour',
  'length',
  'quantity',
  'start',
  'end',
  'good',
  'scrapped',
  'estimate s',
  'changeover s',
  'who',
] as const;
type Column = (typeof COLUMNS)[number];
const OPTIONAL: readonly Column[] = ['good', 'scrapped', 'estimate s', 'changeover s', 'who'];

const operation = z
  .string()
  .refine(
    (text) => operationId.safeParse(text).success,
    `write it like 1042/2:shear or 1042/2:brake; the steps are ${STAGES.join(', ')}`,
  );
/** Names parted by semicolons. */
const namesOf = (text: string): string[] => [...new Set(text.split(';').filter((one) => one.trim() !== ''))];
const who = z
  .string()
  .refine(
    (text) => recordSchema.shape.who.safeParse(namesOf(text)).success,
    'write at most 20 names, each up to 60 characters, with semicolons between',
  );
const seconds: Sort = { is: 'whole', min: 0, max: 90 * DAY };
const pieces: Sort = { is: 'whole', min: 0, max: 100_000 };

const SORTS: Readonly<Record<Column, Sort>> = {
  operation: { is: 'text', schema: operation },
  machine: { is: 'named', kind: 'machine' },
  part: { is: 'named', kind: 'part' },
  material: { is: 'named', kind: 'material' },
  gauge: { is: 'gauge' },
  colour: { is: 'named', kind: 'colour' },
  length: { is: 'length' },
  quantity: { is: 'whole', min: 1, max: 100_000 },
  start: { is: 'date', clock: '00:00' },
  end: { is: 'date', clock: '00:00' },
  good: pieces,
  scrapped: pieces,
  'estimate s': seconds,
  'changeover s': seconds,
  who: { is: 'text', schema: who },
};

const finishedFields = (): FileFields => ({
  kind: 'finished',
  key: 'operation',
  fields: COLUMNS.map((name): Field => ({
    name,
    sort: SORTS[name],
    needed: OPTIONAL.includes(name) ? 'no' : 'row',
    words: WORDS[name],
  })),
});

/** Files of finished operations. Whatever they name must stand in the shop, or nothing could be learned. */
export const finishedFiles: ImportKind = {
  fields: finishedFields,
  judge(rows, context) {
    const judged = new Map<number, JudgedRow>();
    const issues: RowIssue[] = [];
    const records: OperationRecord[] = [];
    const seen = new Set<string>();
    for (const row of rows) {
      const record = recordOf(context.shop, row);
      if (!record) continue;
      const current = context.past.record(record.id);
      const found = issuesOf(context, record, current, seen.has(record.id));
      issues.push(...found.map((issue) => ({ ...issue, row: row.row })));
      // Names are no figures: a file without them tells of the same work.
      const isKnown = current !== null && sameContent(current, { ...record, who: current.who });
      seen.add(record.id);
      if (found.length > 0) continue;
      judged.set(row.row, {
        state: isKnown ? 'known' : 'new',
        subject: `operation ${record.id}`,
        words: '',
        was: {},
      });
      if (!isKnown) records.push(record);
    }
    return {
      rows: judged,
      issues,
      notes:
        rows.some(({ values }) => values['who'] !== undefined) && !context.shop.settings.askWho
          ? ['Names are not kept: “Ask who ran it” is off in Settings.']
          : [],
      missing: [],
      command:
        records.length === 0
          ? null
          : (fileName, remembered) => ({ do: 'records.import', fileName, records, remembered }),
    };
  },
};

/** A row as a record; null where a cell is not there, which is said before. */
function recordOf({ settings }: Shop, { values }: ReadRow): OperationRecord | null {
  const record = {
    id: values['operation'],
    machineId: values['machine'],
    partId: values['part'],
    materialId: values['material'],
    gauge: values['gauge'],
    colourId: values['colour'],
    lengthMm: values['length'],
    quantity: values['quantity'],
    good: values['good'] ?? values['quantity'],
    scrapped: values['scrapped'] ?? 0,
    start: values['start'],
    end: values['end'],
    who: settings.askWho ? namesOf(String(values['who'] ?? '')) : [],
    changeoverSeconds: values['changeover s'] ?? null,
    pauses: [],
    estimatedSeconds: values['estimate s'] ?? 0,
    revision: 0,
  };
  return recordSchema.safeParse(record).data ?? null;
}

type OfRow = Omit<RowIssue, 'row'>;

function issuesOf(
  { shop, now }: JudgeContext,
  record: OperationRecord,
  current: OperationRecord | null,
  isTwice: boolean,
): OfRow[] {
  const { id, machineId, start, end, quantity, good } = record;
  const issues: OfRow[] = [];
  const refuse = (field: Column, reason: string): void => {
    issues.push({ field, reason });
  };
  const machine = shop.machine.find((one) => one.id === machineId);
  if (machine && stageOfOperation(id) !== machine.stage)
    refuse(
      'machine',
      `${machineId} is no ${shortStageName(stageOfOperation(id))}, so it cannot have done ${id}.`,
    );
  if (end !== null && end <= start) refuse('end', 'It must end after it starts.');
  if (end !== null && end > now) refuse('end', 'It is still to come, so it cannot be finished.');
  if (good > quantity) refuse('good', `More good pieces than the ${quantity} asked for.`);
  if (issues.length > 0) return issues;
  if (current && sameContent(current, { ...record, who: current.who })) return [];
  if (current) refuse('operation', `${id} is recorded already, with other figures. Leave it out.`);
  else if (isTwice) refuse('operation', `${id} is in the file twice. Keep one of the rows.`);
  else if (shop.line.some((l) => l.id === lineOfOperation(id)))
    refuse(
      'operation',
      `Line ${lineOfOperation(id)} is still in the shop. Report work on it on the Floor screen.`,
    );
  return issues;
}
