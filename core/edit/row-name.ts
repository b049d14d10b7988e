import type { RowKind } from '../shop/state.ts';
import { operationName } from './plan-commands.ts';

const NAMES: Readonly<Record<RowKind, (id: string) => string>> = {
  settings: () => 'the settings',
  material: (id) => `material ${id}`,
  colour: (id) => `colour ${id}`,
  sheet: (id) => `sheet size ${id}`,
  part: (id) => `part ${id}`,
  calendar: (id) => `calendar ${id}`,
  machine: (id) => `machine ${id}`,
  delivery: (id) => `delivery ${id}`,
  tool: (id) => `tool ${id}`,
  downtime: (id) => `downtime ${id}`,
  absence: (id) => `absence ${id}`,
  order: (id) => `order ${id}`,
  line: (id) => `line ${id}`,
  published: (id) => `the published queue of ${id}`,
  queue: (id) => `the queue of ${id}`,
  pin: (id) => `the pin of ${operationName(id)}`,
  changeover: (id) => `the changeover of ${id}`,
  record: (id) => `the record of ${operationName(id)}`,
  learned: () => 'a time standard from finished work',
  movement: () => 'an entry of the stock’s history',
  // A list that sheets were taken for has the moment behind its run's name.
  cutCount: (id) => `the cuts counted of run ${id.split(' ')[0]}`,
  cutList: (id) => `the list of cuts of run ${id.split(' ')[0]}`,
  keptList: (id) => `the list “${id}”`,
  otherName: (id) => `the other name “${id.slice(id.indexOf(':') + 1)}”`,
  fileLayout: () => 'how a file’s columns are read',
};

/** A row as people say it, in sentences and in the history. */
export const rowName = (kind: RowKind, id: string): string => NAMES[kind](id);
