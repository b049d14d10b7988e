import { isFurther } from '../part/stage.ts';
import type { Machine } from '../shop/machine.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Settings } from '../shop/settings.ts';
import type { RowOf, Shop } from '../shop/state.ts';
import { strayBreaks } from '../time/calendar.ts';
import { isTimeZone } from '../time/wall.ts';
import type { Command, FormKind, FormRow } from './command.ts';
import { partRemoval, savePart } from './part-commands.ts';
import { deliveryIssues } from './delivery-rules.ts';
import { publishingChanges } from './publish-commands.ts';
import { rowName } from './row-name.ts';
import { otherCase } from './same-code.ts';
import { toolIssues } from './tool-rules.ts';
import { refuseStale, staleIssue } from './stale.ts';
import { change, withChanges, type RowChange, type Edit } from '../shop/row-change.ts';

export function saveRow(shop: Shop, kind: FormKind, row: RowOf<FormKind>): Result<Edit> {
  const before = (shop[kind] as readonly RowOf<FormKind>[]).find((r) => r.id === row.id) ?? null;
  const subject = rowName(kind, row.id);
  const stale = refuseStale(kind, subject, before, row);
  if (stale) return stale;
  const other = before ? null : otherCase(shop[kind], row.id);
  if (other) return err(issue(subject, 'id', other.message, other.advice));
  if (kind === 'part') return savePart(shop, before as RowOf<'part'> | null, row as RowOf<'part'>);
  const issues = [...brokenReferences(shop, kind, row, subject), ...countedOnForm(kind, before, row)];
  if (issues.length > 0) return err(...issues);
  const changes = [change(kind, before as never, row as never) as RowChange];
  return ok({ label: `${before ? 'Change' : 'Add'} ${subject}`, changes });
}

/**
 * Save several rows in one step, each checked against the shop with those before it.
 * @returns one edit, each row once; or what is wrong with every row that cannot be saved, and nothing is
 */
export function saveRows(shop: Shop, rows: readonly FormRow[], label: string): Result<Edit> {
  let next = shop;
  const changes: RowChange[] = [];
  const issues: Issue[] = [];
  for (const { kind, row } of rows) {
    const saved = saveRow(next, kind, row);
    if (!saved.ok) {
      issues.push(...saved.issues);
      continue;
    }
    changes.push(...saved.value.changes);
    next = withSaved(next, saved.value.changes);
  }
  return issues.length > 0 ? err(...issues) : ok({ label, changes });
}

/** As `withChanges`, but new rows stand last: sorting thousands of rows after each of them would take minutes. */
const withSaved = (shop: Shop, changes: readonly RowChange[]): Shop =>
  changes.some(({ after }) => after === null)
    ? withChanges(shop, changes)
    : changes.reduce((next, { kind, id, before, after }) => {
        const rows = next[kind] as readonly { readonly id: string }[];
        const saved = rows.slice();
        saved[before ? rows.findIndex((row) => row.id === id) : rows.length] = after!;
        return { ...next, [kind]: saved };
      }, shop);

/** Remove a row nothing else names; otherwise say what does. */
export function removeRow(
  shop: Shop,
  { kind, id, revision }: Omit<Extract<Command, { readonly do: 'row.remove' }>, 'do'>,
): Result<Edit> {
  const row = (shop[kind] as readonly RowOf<FormKind>[]).find((r) => r.id === id) ?? null;
  const subject = rowName(kind, id);
  if (!row) return err(issue(subject, 'id', `There is no ${subject}.`, 'It may have been removed already.'));
  const stale = staleIssue<FormKind>(kind, subject, row, { id, revision, removed: true });
  if (stale) return err(stale);
  if (kind === 'machine' && shop.record.some((r) => r.machineId === id))
    return err(
      issue(
        subject,
        'id',
        `The ${subject} has finished work in its history.`,
        'Keep it, so that the history stays, and add a downtime in Shop, Machines for the time it is down.',
      ),
    );
  const users = usersOf(shop, kind, id);
  if (users.length > 0) {
    const some = users.slice(0, 3).join(', ') + (users.length > 3 ? ` and ${users.length - 3} more` : '');
    return err(issue(subject, 'id', `The ${subject} is used by ${some}.`, 'Change or remove those first.'));
  }
  const changes = [
    ...(kind === 'machine' ? withMachine(shop, id) : []),
    ...(kind === 'part'
      ? partRemoval(shop, row as RowOf<'part'>)
      : [change(kind, row as never, null) as RowChange]),
  ];
  return ok({ label: `Remove ${subject}`, changes });
}

/** What is kept by machine goes with it. */
const withMachine = (shop: Shop, id: string): RowChange[] => [
  ...shop.queue.filter((row) => row.id === id).map((row) => change('queue', row, null)),
  ...shop.published.filter((row) => row.id === id).map((row) => change('published', row, null)),
  ...shop.changeover.filter((row) => row.id === id).map((row) => change('changeover', row, null)),
];

export function saveSettings(shop: Shop, row: Settings): Result<Edit> {
  const stale = refuseStale('settings', 'settings', shop.settings, row);
  if (stale) return stale;
  if (!isTimeZone(row.timeZone))
    return err(
      issue(
        'settings',
        'time zone',
        `“${row.timeZone}” is not a time zone.`,
        'Use a name such as America/Chicago.',
      ),
    );
  const changes = [change('settings', shop.settings, row), ...publishingChanges(shop, row)];
  return ok({ label: 'Change settings', changes });
}

function brokenReferences(shop: Shop, kind: FormKind, row: RowOf<FormKind>, subject: string): Issue[] {
  const missing = (what: string, id: string): Issue =>
    issue(subject, what, `There is no ${what} ${id}.`, `Add the ${what} first, or choose another.`);
  if (kind === 'machine') {
    const saved = row as Machine;
    const issues = shop.calendar.some((c) => c.id === saved.calendarId)
      ? []
      : [missing('calendar', saved.calendarId)];
    return [...issues, ...incomplete(saved, subject), ...stageChanged(shop, saved, subject)];
  }
  if (kind === 'downtime') {
    const { machineId } = row as RowOf<'downtime'>;
    return shop.machine.some((m) => m.id === machineId) ? [] : [missing('machine', machineId)];
  }
  if (kind === 'tool') return toolIssues(shop, row as RowOf<'tool'>, subject);
  if (kind === 'absence') return tooManyOut(shop, row as RowOf<'absence'>, subject);
  if (kind === 'sheet') {
    const saved = row as RowOf<'sheet'>;
    const material = shop.material.find((m) => m.id === saved.materialId);
    const issues = shop.colour.some((c) => c.id === saved.colourId)
      ? []
      : [missing('colour', saved.colourId)];
    if (!material) return [...issues, missing('material', saved.materialId)];
    return material.gauges.some((g) => g.label === saved.gauge)
      ? issues
      : [...issues, missing('gauge', saved.gauge)];
  }
  if (kind === 'delivery') return deliveryIssues(shop, row as RowOf<'delivery'>, subject);
  if (kind === 'calendar') return strayBreaks(row as RowOf<'calendar'>, subject);
  if (kind === 'material') return badGauges(shop, row as RowOf<'material'>, subject);
  return [];
}

/** No more can be out than are counted; where nobody is counted, a machine stands still instead. */
function tooManyOut(shop: Shop, { people }: RowOf<'absence'>, subject: string): Issue[] {
  const { crewLimit } = shop.settings;
  if (crewLimit === null)
    return [
      issue(
        subject,
        'people',
        'People are not counted in this shop.',
        'Add a downtime for the stopped machine in Shop, Machines, or set “People at work at once” in Settings.',
      ),
    ];
  if (people <= crewLimit) return [];
  const message = `${people} people cannot be out: ${crewLimit} work at once.`;
  return [issue(subject, 'people', message, 'Give fewer, or change “People at work at once” in Settings.')];
}

/** What lies in stock changes by entries of its history only (core/edit/stock-commands.ts). */
function countedOnForm(kind: FormKind, before: RowOf<FormKind> | null, row: RowOf<FormKind>): Issue[] {
  if (kind !== 'sheet' || before === null) return [];
  const [current, saved] = [before as RowOf<'sheet'>, row as RowOf<'sheet'>];
  if (current.onHand === saved.onHand) return [];
  return [
    issue(
      `sheet size ${saved.id}`,
      'onHand',
      `Stock ${saved.id} has ${current.onHand} on hand; the form cannot make it ${saved.onHand}.`,
      'Receive it or set its count in Stock, so that its history stays whole.',
    ),
  ];
}

/** Each stage needs its own figures, or no estimate can be made. */
function incomplete(machine: Machine, subject: string): Issue[] {
  const need = (field: string, present: boolean): Issue[] =>
    present
      ? []
      : [issue(subject, field, `A ${machine.stage} needs its ${field}.`, 'Read it off the machine’s plate.')];
  if (isFurther(machine.stage)) return [];
  const capacity = [
    ...need('longest piece', machine.maxLengthMm !== null),
    ...need('thickest sheet', machine.maxThicknessMm !== null),
  ];
  return machine.stage === 'shear'
    ? [
        ...capacity,
        ...need('back gauge travel', machine.backGaugeMm !== null),
        ...need('minimum strip', machine.minStripMm !== null),
      ]
    : [
        ...capacity,
        ...need('force in tonnes', machine.tonnes !== null),
        ...need('die opening', machine.dieOpeningMm !== null),
      ];
}

function stageChanged(shop: Shop, machine: Machine, subject: string): Issue[] {
  const before = shop.machine.find((m) => m.id === machine.id);
  const queued = shop.queue.find((q) => q.id === machine.id)?.operations.length ?? 0;
  if (!before || before.stage === machine.stage || queued === 0) return [];
  return [
    issue(
      subject,
      'stage',
      `${machine.id} has ${queued} operations in its queue.`,
      'Add the other machine as a new one.',
    ),
  ];
}

function badGauges(shop: Shop, material: RowOf<'material'>, subject: string): Issue[] {
  const labels = new Set(material.gauges.map((g) => g.label));
  const users = [...shop.line, ...shop.sheet].filter(
    (x) => x.materialId === material.id && !labels.has(x.gauge),
  );
  if (labels.size < material.gauges.length)
    return [issue(subject, 'gauges', 'Two gauges have the same label.', 'Give each its own label.')];
  const stray = material.deductions.find((d) => !labels.has(d.gauge));
  if (stray)
    return [
      issue(
        subject,
        'deductions',
        `A measured deduction names gauge ${stray.gauge}, which the material has not.`,
        'Choose one of its gauges, or remove the row.',
      ),
    ];
  const first = users[0];
  return first
    ? [
        issue(
          subject,
          'gauges',
          `Gauge ${first.gauge} is used by ${first.id}.`,
          'Keep the gauge, or change those first.',
        ),
      ]
    : [];
}

function usersOf(shop: Shop, kind: FormKind, id: string): string[] {
  const lines = (match: (l: RowOf<'line'>) => boolean) => shop.line.filter(match).map((l) => `line ${l.id}`);
  const sheets = (match: (s: RowOf<'sheet'>) => boolean) =>
    shop.sheet.filter(match).map((s) => `sheet size ${s.id}`);
  switch (kind) {
    case 'material':
      return [...lines((l) => l.materialId === id), ...sheets((s) => s.materialId === id)];
    case 'colour':
      return [...lines((l) => l.colourId === id), ...sheets((s) => s.colourId === id)];
    case 'part':
      return [
        ...lines((l) => l.partId === id),
        ...shop.part.filter((p) => p.family?.is === 'size' && p.family.of === id).map((p) => `size ${p.id}`),
      ];
    case 'calendar':
      return shop.machine.filter((m) => m.calendarId === id).map((m) => `machine ${m.id}`);
    case 'machine':
      return [
        ...shop.downtime.filter((d) => d.machineId === id).map((d) => `downtime ${d.id}`),
        ...shop.tool.filter((t) => t.machineIds.includes(id)).map((t) => `tool ${t.id}`),
        ...shop.part.filter((p) => p.steps.some((s) => s.placeId === id)).map((p) => `part ${p.id}`),
      ];
    case 'sheet':
      return shop.delivery.filter((d) => d.sheetId === id).map((d) => `delivery ${d.id}`);
    case 'tool':
    case 'downtime':
    case 'absence':
    case 'delivery':
      return [];
  }
}
