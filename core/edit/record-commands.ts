import { lineOfOperation } from '../shop/order.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { Command } from './command.ts';
import { memoryChanges } from './file-memory.ts';
import { operationName } from './plan-commands.ts';
import { change, type Edit } from '../shop/row-change.ts';

/**
 * Add finished operations that a file brought, so that there is something to learn from. Work on lines that stand in
 * the shop is reported on the floor instead, where the plan follows it.
 */
export function importRecords(
  shop: Shop,
  { fileName, records, remembered }: Extract<Command, { readonly do: 'records.import' }>,
): Result<Edit> {
  const lines = new Set(shop.line.map((l) => l.id));
  const seen = new Set(shop.record.map((r) => r.id));
  const issues: Issue[] = [];
  for (const record of records) {
    const name = operationName(record.id);
    const refuse = (field: string, message: string, advice: string): void => {
      issues.push(issue(name, field, message, advice));
    };
    if (seen.has(record.id)) refuse('operation', `${name} is recorded already.`, 'Leave it out of the file.');
    else if (lines.has(lineOfOperation(record.id)))
      refuse(
        'operation',
        `Line ${lineOfOperation(record.id)} is still in the shop.`,
        'Report work on it on the Floor screen.',
      );
    if (record.end === null || record.end < record.start)
      refuse('end', `${name} does not end after it starts.`, 'Give a start and a later end.');
    seen.add(record.id);
  }
  if (issues.length > 0) return err(...issues);
  return ok({
    label: `Import ${records.length} finished ${records.length === 1 ? 'operation' : 'operations'} from ${fileName}`,
    changes: [...records.map((record) => change('record', null, record)), ...memoryChanges(shop, remembered)],
  });
}
