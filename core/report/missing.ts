import type { Issue } from '../result.ts';
import { machineInputs, onOpenMachines } from '../planning/machine-inputs.ts';
import { linesLeftOut } from '../planning/left-out.ts';
import { operationsOf } from '../planning/operations.ts';
import { hits } from '../part/girth.ts';
import { furtherStage, FURTHER_STAGES, stageName } from '../part/stage.ts';
import type { OrderLine } from '../shop/order.ts';
import { metalName } from '../shop/metal-name.ts';
import type { Shop } from '../shop/state.ts';
import type { Instant } from '../units/brand.ts';
import { counted } from '../units/count.ts';
import { addMachines, addSheets, metalsIn, openUsualHours, waitWords, type Remedy } from './remedies.ts';

/** The steps of setting a shop up, in their order. */
export const SET_UP_STEPS = ['shop', 'machines', 'metals', 'sheets', 'orders'] as const;
export type SetUpStep = (typeof SET_UP_STEPS)[number];

const CAUSES = [
  'shear',
  'brake',
  'bench',
  'hours',
  'material',
  'colour',
  'sheet',
  'size',
  'part',
  'limit',
  'other',
  'order',
] as const;
type Cause = (typeof CAUSES)[number];

/** Something that is missing before the shop, or some of its lines, can be planned. */
export interface Missing {
  readonly cause: Cause;
  /** The step of the set-up that mends it. */
  readonly step: SetUpStep;
  /** What is missing, and how many lines wait for it: whole sentences. */
  readonly message: string;
  /** What to do about it, a whole sentence. */
  readonly advice: string;
  /** Open lines that wait for it. */
  readonly lines: readonly string[];
  /** What the plan says of each of those lines. */
  readonly issues: readonly Issue[];
  /** null: someone must decide. */
  readonly remedy: Remedy | null;
  /** Where it is mended by hand: parts of an address, ['shop', 'sheets']. */
  readonly place: readonly string[];
}

/** What a cause is, found by looking at the shop. */
type Found = Omit<Missing, 'cause' | 'lines' | 'issues'>;

interface Asked {
  readonly shop: Shop;
  /** Open lines of open orders. */
  readonly open: readonly OrderLine[];
  /** Ids of machines without open hours ahead. */
  readonly shut: readonly string[];
  /** Of the cause that is looked at. */
  readonly issues: readonly Issue[];
  readonly waiting: readonly OrderLine[];
}

/** Which cause an issue of a line belongs to, by what the plan says of it (core/planning). */
function causeOf({ subject, field }: Issue): Cause {
  if (field === 'shear' || field === 'brake' || field === 'hours' || field === 'sheet') return field;
  if (furtherStage.safeParse(field).success) return 'bench';
  if (field === 'machine') return 'limit';
  const ofSheet = (field === 'girth' || field === 'length') && !subject.includes(',');
  return ofSheet ? 'size' : 'other';
}

/**
 * Everything that is missing to plan the shop, each cause once, in the order in which it is best mended: of a shop
 * without open lines what it lacks for the first; of one with them what they wait for.
 * @param now hours behind it do not count as open
 * @returns nothing when there are open lines and each of them can be planned
 */
export function missingToPlan(shop: Shop, now: Instant): Missing[] {
  const open = openLines(shop);
  const { issues, shut } = leftOut(shop, now, open);
  return CAUSES.flatMap((cause): Missing[] => {
    const own = issues.filter((issue) => causeOf(issue) === cause);
    const lines = linesLeftOut(own);
    const waiting = open.filter(({ id }) => lines.includes(id));
    const found = looks[cause]({ shop, open, shut, issues: own, waiting });
    return found ? [{ cause, lines, issues: own, ...found }] : [];
  });
}

function openLines(shop: Shop): OrderLine[] {
  const orders = new Set(shop.order.filter(({ status }) => status === 'open').map(({ id }) => id));
  return shop.line.filter(({ orderId, status }) => status === 'open' && orders.has(orderId));
}

/** What speaks against each open line, and the machines that never open. */
function leftOut(shop: Shop, now: Instant, open: readonly OrderLine[]) {
  const machines = machineInputs(shop, now);
  const found = operationsOf(shop);
  if (machines.ok) {
    const { shut } = machines.value;
    return { issues: onOpenMachines(found, shop.machine, shut).unplannable, shut: [...shut.keys()] };
  }
  // Not one machine opens: every line waits for hours, those too that wait for something else.
  const [first] = machines.issues;
  const hours = open.map(({ id }): Issue => ({ ...first!, subject: `line ${id}`, field: 'hours' }));
  return { issues: [...hours, ...found.unplannable], shut: shop.machine.map(({ id }) => id) };
}

const looks: Readonly<Record<Cause, (asked: Asked) => Found | null>> = {
  shear: ({ shop, waiting }) => (has(shop, 'shear') ? null : noMachine(shop, 'shear', waiting)),
  brake: ({ shop, open, waiting }) =>
    has(shop, 'brake') || (waiting.length === 0 && !bendsSoon(shop, open))
      ? null
      : noMachine(shop, 'brake', waiting),
  bench: noBench,
  hours: noHours,
  material: ({ shop }) =>
    shop.material.length > 0
      ? null
      : {
          step: 'metals',
          message: 'No metal is kept yet.',
          advice: 'Tick the metals and gauges that you buy.',
          remedy: null,
          place: ['shop', 'materials'],
        },
  colour: ({ shop }) =>
    shop.colour.length > 0
      ? null
      : {
          step: 'metals',
          message: 'No colour is kept yet; bare metal counts as one.',
          advice: 'Tick the colours that you buy.',
          remedy: null,
          place: ['shop', 'colours'],
        },
  sheet: noSheet,
  size: tooSmall,
  part: ({ shop }) =>
    shop.part.length > 0
      ? null
      : {
          step: 'orders',
          message: 'No part is there yet.',
          advice: 'Take parts from a file, or draw the first: a line names the part that it asks for.',
          remedy: null,
          place: ['shop', 'parts', '+'],
        },
  limit: ({ waiting }) =>
    waiting.length === 0
      ? null
      : {
          step: 'machines',
          message: `${counted(waiting.length, 'line fits', 'lines fit')} no machine by the limits entered.`,
          advice: 'Change the lines, or the limits where they are wrong; never against the machine’s plate.',
          remedy: null,
          place: ['shop', 'machines'],
        },
  other: ({ waiting, issues }) =>
    waiting.length === 0
      ? null
      : {
          step: 'orders',
          message: `${counted(waiting.length, 'line asks', 'lines ask')} for what cannot be made: ${issues[0]!.message}`,
          advice: 'Open the work order and choose another part, metal or gauge.',
          remedy: null,
          place: ['orders', waiting[0]!.orderId],
        },
  order: ({ open }) =>
    open.length > 0
      ? null
      : {
          step: 'orders',
          message: 'No work order is open.',
          advice: 'Take work orders from a file, or type the first.',
          remedy: null,
          place: ['orders'],
        },
};

const has = (shop: Shop, stage: 'shear' | 'brake'): boolean => shop.machine.some((m) => m.stage === stage);

/** Whether a brake will be asked for: while nothing is open by what the shop makes, or because nobody has said yet. */
const bendsSoon = (shop: Shop, open: readonly OrderLine[]): boolean =>
  open.length === 0 && (shop.part.length === 0 || shop.part.some(({ profile }) => hits(profile) > 0));

const noMachine = (shop: Shop, stage: 'shear' | 'brake', waiting: readonly OrderLine[]): Found => ({
  step: 'machines',
  message: `The shop has no ${stageName[stage]}.${waitWords(waiting.length)}`,
  advice: 'Add one with usual figures, then put in those of your machine.',
  remedy: addMachines(shop, [stage]),
  place: ['shop', 'machines', '+'],
});

/** A bench or an outside shop for a further step is missing only where a line asks for it. */
function noBench({ shop, issues, waiting }: Asked): Found | null {
  const stages = FURTHER_STAGES.filter((stage) => issues.some(({ field }) => field === stage));
  if (stages.length === 0) return null;
  const names = stages.map((stage) => `no ${stageName[stage]}`).join(' and ');
  return {
    step: 'machines',
    message: `The shop has ${names}.${waitWords(waiting.length)}`,
    advice: 'Add one, or take the step from the parts that ask for it.',
    remedy: addMachines(shop, stages),
    place: ['shop', 'machines', '+'],
  };
}

/** Machines that never open matter when lines wait for them, or while no line is there that could. */
function noHours({ shop, open, shut, waiting }: Asked): Found | null {
  if (shut.length === 0 || (waiting.length === 0 && open.length > 0)) return null;
  return {
    step: 'machines',
    message: `${shut.join(' and ')} ${shut.length === 1 ? 'has' : 'have'} no open hours ahead.${waitWords(waiting.length)}`,
    advice: 'Give the calendar its shifts, or end the downtime.',
    remedy: openUsualHours(shop, shut),
    place: ['shop', 'calendars'],
  };
}

/** Metals without a sheet size: those that lines ask for; while none is open, every colour of a gauge kept in no size. */
function noSheet({ shop, open, waiting }: Asked): Found | null {
  const metals = open.length > 0 ? metalsIn(waiting) : neverKept(shop);
  const [first] = metals;
  if (!first) return null;
  const what = metals.length === 1 ? `${metalName(shop, first)} has` : `${metals.length} metals have`;
  return {
    step: 'sheets',
    message: `${what} no sheet size.${waitWords(waiting.length)}`,
    advice: 'Add the usual size, or choose your own. Prices are put in later.',
    remedy: addSheets(shop, metals, waiting),
    place: ['shop', 'sheets'],
  };
}

const neverKept = ({ material, colour, sheet }: Shop) =>
  material.flatMap(({ id: materialId, gauges }) =>
    gauges
      .filter(({ label }) => !sheet.some((s) => s.materialId === materialId && s.gauge === label))
      .flatMap(({ label: gauge }) => colour.map(({ id: colourId }) => ({ materialId, gauge, colourId }))),
  );

function tooSmall({ shop, waiting }: Asked): Found | null {
  if (waiting.length === 0) return null;
  return {
    step: 'sheets',
    message: `${counted(waiting.length, 'line has a blank', 'lines have blanks')} larger than the sheets kept.`,
    advice: 'Add a larger size, priced by its area like the one kept, or choose your own.',
    remedy: addSheets(shop, metalsIn(waiting), waiting),
    place: ['shop', 'sheets'],
  };
}
