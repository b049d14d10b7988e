import { FIRST_PIECE, firstPieceSeconds, firstPieceValue } from '../estimate/first-piece.ts';
import { hasTools } from '../limits/tool-limits.ts';
import type { MachineInput } from '../schedule/problem.ts';
import { workingTime, type WorkingTime } from '../schedule/working-time.ts';
import { wholeDays } from './away.ts';
import { isElsewhere, stepDone } from '../part/stage.ts';
import { union, type Interval } from '../time/interval.ts';
import { openIntervals } from '../time/working-time.ts';
import { instant, type Instant } from '../units/brand.ts';
import type { Machine } from '../shop/machine.ts';
import type { ShopOperation, ShopOperations } from './operations.ts';
import { err, ok, issue, type Issue, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';
import { DAY } from '../units/duration.ts';

/** Open hours are looked up this far: back, so that started work has its hours; ahead, so that a long backlog has an end. */
const DAYS_BACK = 14;
export const DAYS_AHEAD = 370;
/** A shorter closed stretch between open ones is a break, which nobody is asked to give up (common practice, no source). */
const LONGEST_BREAK = 2 * 3600;

/** The machines as the scheduling engine sees them. */
interface ShopMachines {
  /** Those with open hours ahead. */
  readonly inputs: readonly MachineInput[];
  /** Those without, by id, each with the reason. */
  readonly shut: ReadonlyMap<string, Issue>;
}

/**
 * Machines with their open hours around an instant. One that never opens is set apart: the others can still be planned.
 * @returns the machines; or the reasons when not one of several ever opens, or the time zone is unknown
 */
export function machineInputs(shop: Shop, now: Instant): Result<ShopMachines> {
  const inputs: MachineInput[] = [];
  const shut = new Map<string, Issue>();
  for (const machine of shop.machine) {
    const hours = hoursOf(shop, machine, now);
    if (hours.ok) inputs.push(inputOf(shop, machine, hours.value));
    else shut.set(machine.id, hours.issues[0]!);
  }
  return shut.size > 0 && inputs.length === 0 ? err(...shut.values()) : ok({ inputs, shut });
}

type Hours = Required<Pick<MachineInput, 'open' | 'noOvertime'>> & { readonly open: readonly Interval[] };

/** Open hours by the machine's calendar, downtime left out; of an outside shop whole days. @returns ascending; or why there are none in [from, to) */
function openBetween(shop: Shop, machine: Machine, from: Instant, to: Instant): Result<readonly Interval[]> {
  const calendar = shop.calendar.find((c) => c.id === machine.calendarId);
  if (!calendar) throw new Error(`machine ${machine.id}: calendar ${machine.calendarId} is gone`);
  const downtimes = shop.downtime.filter((d) => d.machineId === machine.id);
  const open = openIntervals(calendar, downtimes, shop.settings.timeZone, from, to);
  return open.ok && isElsewhere(machine.stage) ? ok(wholeDays(open.value, shop.settings.timeZone)) : open;
}

/** A machine's open hours from the day before `from` to the day after `to`: in them past work was done. */
export function hoursAround(shop: Shop, machine: Machine, from: number, to: number): WorkingTime {
  const open = openBetween(shop, machine, instant(from - DAY), instant(to + DAY));
  return workingTime(open.ok ? open.value : []);
}

function hoursOf(shop: Shop, machine: Machine, now: Instant): Result<Hours> {
  const back = isElsewhere(machine.stage) ? DAYS_AHEAD : DAYS_BACK;
  const [from, to] = [instant(now - back * DAY), instant(now + DAYS_AHEAD * DAY)];
  const around = openBetween(shop, machine, from, to);
  // What opened only before now does not open any more.
  const opens = around.ok && around.value.some(({ end }) => end > now);
  const open = opens ? around : openBetween(shop, machine, now, to);
  if (!open.ok)
    return err(
      ...open.issues.map((p) => ({
        ...p,
        subject: `machine ${machine.id}`,
        message: `Machine ${machine.id}: ${p.message}`,
      })),
    );
  const downtimes = shop.downtime.filter((d) => d.machineId === machine.id);
  const out = union(downtimes.map((d) => ({ start: d.from, end: d.to })));
  return ok({ open: open.value, noOvertime: union([...out, ...breaksIn(open.value)]) });
}

/** The short gaps between open hours. */
const breaksIn = (open: readonly Interval[]): Interval[] =>
  open.slice(1).flatMap(({ start: end }, k) => {
    const start = open[k]!.end;
    return end - start <= LONGEST_BREAK ? [{ start, end }] : [];
  });

function inputOf(shop: Shop, machine: Machine, hours: Hours): MachineInput {
  const { id, stage, state, changeover } = machine;
  const seconds = firstPieceSeconds(machine);
  const first = seconds > 0 && state ? firstPieceValue(state, hasTools(machine, shop.tool)) : null;
  const { attributes } = changeover;
  return {
    id,
    stage,
    initial: (first === null ? state : { ...state, [FIRST_PIECE]: first }) as Record<string, string> | null,
    changeover: {
      ...changeover,
      attributes: seconds > 0 ? { ...attributes, [FIRST_PIECE]: seconds } : attributes,
    } as MachineInput['changeover'],
    ...hours,
    ...(isElsewhere(stage) ? { initial: null, changeover: null, unlimited: true } : {}),
  };
}

/**
 * The operations without the machines that never open. A line with a step that only those can do, or that was started on
 * one, cannot be planned as a whole.
 */
export function onOpenMachines(
  { operations, unplannable }: ShopOperations,
  machines: readonly Machine[],
  shut: ReadonlyMap<string, Issue>,
): ShopOperations {
  if (shut.size === 0) return { operations, unplannable };
  const stuck = new Map<string, Issue>();
  const able = operations.map((o): ShopOperation => {
    const startedOn = o.started && shut.has(o.started.machineId) ? o.started.machineId : null;
    const open = o.machines.filter(({ id }) => !shut.has(id));
    const closed = o.machines.filter(({ id }) => shut.has(id));
    if (startedOn !== null || open.length === 0) stuck.set(o.line.id, stuckOn(o, startedOn, machines, shut));
    const refused = closed.map(({ id }) => ({ machineId: id, reason: shut.get(id)!.message }));
    return { ...o, machines: open, refused: [...o.refused, ...refused] };
  });
  return {
    operations: able.filter((o) => !stuck.has(o.line.id)),
    unplannable: [...unplannable, ...stuck.values()],
  };
}

function stuckOn(
  { line, stage, machines: able }: ShopOperation,
  startedOn: string | null,
  machines: readonly Machine[],
  shut: ReadonlyMap<string, Issue>,
): Issue {
  const nameOf = (id: string) => machines.find((m) => m.id === id)?.name ?? id;
  const names = able.map(({ id }) => nameOf(id)).join(' or ');
  const why =
    startedOn === null
      ? `can only be ${stepDone[stage]} on ${names}`
      : `is being ${stepDone[stage]} on ${nameOf(startedOn)}`;
  const advice = shut.get(startedOn ?? able[0]!.id)!.advice;
  return issue(`line ${line.id}`, 'hours', `Line ${line.id} ${why}: no open hours ahead.`, advice);
}
