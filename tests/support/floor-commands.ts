import type { Command } from '../../core/edit/command.ts';
import { at } from './builders.ts';

/** A clock of the Monday on which the builders' shop is worked in. */
export const monday = (clock: string) => at('2026-11-30', clock);

/** What a floor screen reports. */
export const start = (operation: string, machineId: string, clock: string): Command => ({
  do: 'floor.start',
  operation,
  machineId,
  at: monday(clock),
  changeoverSeconds: null,
});

export const finish = (operation: string, clock: string, good: number, scrapped = 0): Command => ({
  do: 'floor.done',
  operation,
  at: monday(clock),
  good,
  scrapped,
});
