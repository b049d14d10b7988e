import { checkPart } from '../part/limits.ts';
import type { Machine } from './machine.ts';
import type { Gauge, Material } from './material.ts';
import type { OrderLine } from './order.ts';
import type { Part } from './part.ts';
import type { Settings } from './settings.ts';

/**
 * Why a machine may not make a line: whole sentences, none when it can. Only what core/part/limits.ts calls a stop
 * counts; its warnings are shown with the part.
 */
export const stopsFor = (
  machine: Machine,
  line: Pick<OrderLine, 'lengthMm'>,
  part: Part,
  material: Material,
  gauge: Gauge,
  settings: Pick<Settings, 'girthRule'>,
): string[] =>
  checkPart(part, { material, gauge, lengthMm: line.lengthMm, girthRule: settings.girthRule }, machine)
    .filter((finding) => finding.severity === 'stop')
    .map((finding) => finding.message);
