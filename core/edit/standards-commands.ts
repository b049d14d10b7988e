import { standard, standardFigure, standardsOf, usualFigure } from '../estimate/standards.ts';
import type { Learned } from '../shop/learned.ts';
import { attribute, type Machine } from '../shop/machine.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import type { FloorCommand } from './floor-commands.ts';
import type { LengthUnits, Units } from '../units/length.ts';
import { change, type Edit } from '../shop/row-change.ts';

type Change = FloorCommand<'standards.accept'>['changes'][number];

/** A machine's figure by its key: a time standard's, or the seconds of a changeover attribute; null without one. */
export function figureOf(machine: Machine, key: string): number | null {
  const changed = attribute.safeParse(key);
  if (changed.success) return machine.changeover.attributes[changed.data] ?? null;
  return standardsOf(machine).some((s) => s.key === key) ? standard(machine, key) : null;
}

/** How a figure is called: "Feed and cut", "changeover of gauge". */
export const figureName = (
  machine: Pick<Machine, 'stage' | 'timesEdition'>,
  key: string,
  units: LengthUnits,
): string => standardsOf(machine).find((s) => s.key === key)?.label[units] ?? `Changeover of ${key}`;

/** A figure as the shop reads it, "18.5 s". */
export const figureWords = (
  machine: Pick<Machine, 'stage' | 'timesEdition'>,
  key: string,
  value: number,
  units: Units,
): string =>
  standardFigure(
    standardsOf(machine).find((s) => s.key === key),
    value,
    units,
  );

/** The machine with one figure set; a standard at its default is left to the default. */
function withFigure(machine: Machine, key: string, value: number): Machine {
  const changed = attribute.safeParse(key);
  if (changed.success) {
    const attributes = { ...machine.changeover.attributes, [changed.data]: Math.round(value) };
    return { ...machine, changeover: { ...machine.changeover, attributes } };
  }
  const known = standardsOf(machine).find((s) => s.key === key);
  const usual = known && usualFigure(machine, known);
  const standards = Object.fromEntries(Object.entries(machine.standards).filter(([name]) => name !== key));
  return { ...machine, standards: value === usual ? standards : { ...standards, [key]: value } };
}

/**
 * Take over what finished work shows of a machine: its figures change, so the plan's times do, and each change is kept
 * with what it rests on. Refused when a figure is not the machine's, or not any more the one the proposal began from.
 */
export function acceptStandards(shop: Shop, command: FloorCommand<'standards.accept'>): Result<Edit> {
  const { machineId, at, changes } = command;
  const machine = shop.machine.find((m) => m.id === machineId);
  if (!machine) return noMachine(machineId);
  const { settings } = shop;
  const issues = changes.flatMap((c) => refuseChange(machine, c, settings));
  if (new Set(changes.map((c) => c.key)).size < changes.length)
    issues.push(
      issue(`machine ${machineId}`, 'key', 'One figure is proposed twice.', 'Keep one of the two.'),
    );
  if (issues.length > 0) return err(...issues);
  const after = changes.reduce((m, { key, after: value }) => withFigure(m, key, value), machine);
  const rows = changes.map((c): Learned => ({
    ...c,
    id: learnedId(shop, machineId, c.key),
    machineId,
    at,
    revertedAt: null,
    revision: 0,
  }));
  const what =
    changes.length === 1
      ? figureName(machine, changes[0]?.key ?? '', settings.units).toLowerCase()
      : `${changes.length} figures`;
  return ok({
    label: `Accept ${what} of ${machineId} from finished work`,
    changes: [change('machine', machine, after), ...rows.map((row) => change('learned', null, row))],
  });
}

const noMachine = (id: string): Result<never> =>
  err(issue(`machine ${id}`, 'machine', `There is no machine ${id}.`, 'It may have been removed.'));

function refuseChange(machine: Machine, { key, before, after }: Change, units: Units): Issue[] {
  const subject = `machine ${machine.id}`;
  const present = figureOf(machine, key);
  const name = figureName(machine, key, units.units);
  const words = (value: number): string => figureWords(machine, key, value, units);
  if (present === null)
    return [issue(subject, key, `${machine.id} has no figure “${key}”.`, 'Look at the proposals again.')];
  if (present !== before)
    return [
      issue(
        subject,
        key,
        `${name} of ${machine.id} is ${words(present)} by now, not ${words(before)}.`,
        'Look at the proposals again.',
      ),
    ];
  if (after > 0) return [];
  return [issue(subject, key, `${name} of ${machine.id} cannot be ${words(after)}.`, 'It must be above 0.')];
}

function learnedId({ learned }: Shop, machineId: string, key: string): string {
  const times = learned.filter((l) => l.machineId === machineId && l.key === key).length;
  return `${machineId}.${key}.${times + 1}`;
}

/** Put back the figure that stood before something was learned. Refused when it was changed again since. */
export function revertStandard(shop: Shop, id: string, at: number): Result<Edit> {
  const row = shop.learned.find((l) => l.id === id);
  const machine = row && shop.machine.find((m) => m.id === row.machineId);
  if (!row || !machine) return noMachine(row?.machineId ?? id);
  const { settings } = shop;
  const name = figureName(machine, row.key, settings.units);
  const refuse = (message: string, advice: string): Result<never> =>
    err(issue(`machine ${machine.id}`, row.key, message, advice));
  if (row.revertedAt !== null) return refuse(`${name} of ${machine.id} was put back already.`, '');
  const present = figureOf(machine, row.key);
  if (present !== row.after)
    return refuse(
      `${name} of ${machine.id} was changed since, to ${present === null ? 'nothing' : figureWords(machine, row.key, present, settings)}.`,
      'Set it in Shop, Machines.',
    );
  return ok({
    label: `Put back ${name.toLowerCase()} of ${machine.id}`,
    changes: [
      change('machine', machine, withFigure(machine, row.key, row.before)),
      change('learned', row, { ...row, revertedAt: at }),
    ],
  });
}
