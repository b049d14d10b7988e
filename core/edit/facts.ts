import type { Command } from './command.ts';

/** What reports something that happened beside the floor's own commands. */
const OTHER_FACTS: readonly Command['do'][] = [
  'records.import',
  'stock.receive',
  'stock.count',
  'stock.import',
  'stock.correct',
  'stock.use',
];

/**
 * Whether a command reports a fact: it is kept in the floor's log and nobody's undo takes it away; a later fact corrects
 * it. What a planner decides is a step of the history instead, which its maker can undo.
 */
export const isFact = (command: Pick<Command, 'do'>): boolean =>
  command.do.startsWith('floor.') || OTHER_FACTS.includes(command.do);
