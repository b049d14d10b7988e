import type { Finding } from './finding.ts';
import type { BlankBasis } from '../part/forming.ts';
import { checkPart } from './limits.ts';
import type { Machine } from '../shop/machine.ts';
import type { Gauge, Material } from '../material/material.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Part } from '../part/part.ts';
import type { Settings } from '../shop/settings.ts';

/** What speaks against a line on a machine, as the shop judges it. Only stops keep it from being planned there. */
export const findingsFor = (
  machine: Machine,
  line: Pick<OrderLine, 'lengthMm'>,
  part: Part,
  material: Material,
  gauge: Gauge,
  shop: BlankBasis & Pick<Settings, 'partRules'>,
): Finding[] => checkPart(part, { material, gauge, lengthMm: line.lengthMm, ...shop }, machine);
