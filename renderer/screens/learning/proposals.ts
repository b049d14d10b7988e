import type { Command } from '../../../core/edit/command.ts';
import { figureName } from '../../../core/edit/standards-commands.ts';
import { learnChangeover } from '../../../core/learn/learn-changeover.ts';
import { learnStandards } from '../../../core/learn/learn-standards.ts';
import type { Proposal } from '../../../core/learn/propose.ts';
import { standardsOf, standardUnit, type StandardUnit } from '../../../core/estimate/standards.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import type { Units } from '../../../core/units/length.ts';
import type { Result } from '../../../core/result.ts';
import type { Happened } from '../../../core/learn/plan-chances.ts';

type Accept = Extract<Command, { do: 'standards.accept' }>;

/** What finished work says of a machine's standards and of its changeovers. */
interface Proposals {
  readonly standards: Result<Proposal[]>;
  readonly changeover: Result<Proposal[]>;
}

export const proposalsFor = (
  machine: Machine,
  { observations, changeovers }: Pick<Happened, 'observations' | 'changeovers'>,
): Proposals => ({
  standards: learnStandards(machine, observations),
  changeover: learnChangeover(machine, changeovers),
});

/** True when the figure in use lies outside of what finished work leaves likely. */
export const differs = ({ present, interval: [low, high] }: Proposal): boolean =>
  present < low || present > high;

/** One of them as a row: its name, its unit, and what would be taken with it. */
export interface ProposalRow {
  readonly proposal: Proposal;
  readonly name: string;
  readonly unit: StandardUnit;
  /** Names of the figures that can only be learned together with it. */
  readonly together: readonly string[];
}

/** A figure's unit in the shop; changeovers are in seconds. */
const unitOf = (machine: Machine, key: string, { units }: Units): StandardUnit =>
  standardUnit(
    standardsOf(machine).find((s) => s.key === key),
    units,
  );

export function rowsOf(machine: Machine, proposals: readonly Proposal[], units: Units): ProposalRow[] {
  return proposals.map((proposal) => ({
    proposal,
    name: figureName(machine, proposal.key, units.units),
    unit: unitOf(machine, proposal.key, units),
    together: proposal.together.map((key) => figureName(machine, key, units.units)),
  }));
}

/** A proposal with those that records cannot tell from it: they hold only together. */
export const withPartners = (all: readonly Proposal[], { key, together }: Proposal): Proposal[] =>
  all.filter((p) => p.key === key || together.includes(p.key));

/** The command that takes proposals over; what is proposed as it is is left out. */
export const acceptCommand = (machineId: string, proposals: readonly Proposal[], at: number): Accept => ({
  do: 'standards.accept',
  machineId,
  at,
  changes: proposals
    .filter(({ present, proposed }) => proposed !== present)
    .map(({ key, present, proposed, interval: [low, high], observations }) => ({
      key,
      before: present,
      after: proposed,
      low,
      high,
      observations,
    })),
});
