import type { Command } from '../edit/command.ts';
import { firstPiecesALine } from '../estimate/first-piece.ts';
import {
  standard,
  standardFigure,
  standardsOf,
  TIMES_EDITION,
  type Standard,
} from '../estimate/standards.ts';
import type { Machine } from '../shop/machine.ts';
import type { Shop } from '../shop/state.ts';
import type { Units } from '../units/length.ts';

/** A figure that the newest edition of the usual times changes. */
export interface ChangedTime {
  /** The machines it is changed on, by code. */
  readonly machines: readonly string[];
  readonly figure: string;
  readonly is: string;
  readonly becomes: string;
  readonly basis: string;
}

interface TimesOffer {
  readonly changes: readonly ChangedTime[];
  /** Takes all of them, on every machine, in one step. */
  readonly command: Command;
}

/**
 * Machines that follow an older edition of the usual times keep its figures until the shop takes the new ones: which those
 * are, and the step that takes them. Figures that the shop set itself stay in either case.
 * @returns null where every machine follows the newest
 */
export function timesOffer(shop: Shop): TimesOffer | null {
  const changes = new Map<string, ChangedTime>();
  const rows: Machine[] = [];
  for (const machine of shop.machine) {
    const next: Machine = { ...machine, timesEdition: TIMES_EDITION };
    const own = machine.timesEdition < TIMES_EDITION ? changedOn(machine, next, shop.settings) : [];
    if (own.length > 0) rows.push(next);
    for (const { machines, ...what } of own) {
      const key = JSON.stringify(what);
      changes.set(key, { ...what, machines: [...(changes.get(key)?.machines ?? []), ...machines] });
    }
  }
  if (rows.length === 0) return null;
  return {
    changes: [...changes.values()],
    command: {
      do: 'rows.save',
      rows: rows.map((row) => ({ kind: 'machine', row })),
      label: 'Take the new usual times',
    },
  };
}

function changedOn(machine: Machine, next: Machine, units: Units): ChangedTime[] {
  const change = (one: Standard, is: string, becomes: string): ChangedTime[] =>
    is === becomes
      ? []
      : [{ machines: [machine.id], figure: one.label[units.units], is, becomes, basis: one.source }];
  return standardsOf(next).flatMap((one) => {
    if (one.key === 'firstPiece') return change(one, whenFirst(machine), whenFirst(next));
    return change(one, figure(one, machine, units), figure(one, next, units));
  });
}

const whenFirst = (machine: Machine): string =>
  firstPiecesALine(machine) > 0 ? 'with every line' : 'once with the changeover that needs it';

function figure(one: Standard, machine: Machine, units: Units): string {
  const value = standard(machine, one.key);
  const isLimit = one.unit === 'mm' || one.unit === 'thickness' || one.unit === 'm2';
  return isLimit && value === 0 ? 'never' : standardFigure(one, value, units);
}
