import type { Finding } from '../part/finding.ts';
import type { Reckoning } from '../part/forming.ts';
import { checkPart } from '../part/limits.ts';
import type { Machine } from './machine.ts';
import type { Gauge, Material } from './material.ts';
import type { OrderLine } from './order.ts';
import type { Part } from './part.ts';
import type { Settings } from './settings.ts';

/** What speaks against a line on a machine, as the shop judges it. Only stops keep it from being planned there. */
export const findingsFor = (
  machine: Machine,
  line: Pick<OrderLine, 'lengthMm'>,
  part: Part,
  material: Material,
  gauge: Gauge,
  shop: Reckoning & Pick<Settings, 'partRules'>,
): Finding[] => checkPart(part, { material, gauge, lengthMm: line.lengthMm, ...shop }, machine);
