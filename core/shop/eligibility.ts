import type { Machine } from './machine.ts';
import type { Gauge, Material } from './material.ts';
import type { OrderLine } from './order.ts';
import type { Part } from './part.ts';

/**
 * Why a machine may not make a line: whole sentences, none when it can. Only stops count; warnings are shown with the part.
 */
export function stopsFor(
  machine: Machine,
  line: OrderLine,
  _part: Part,
  _material: Material,
  _gauge: Gauge,
): string[] {
  if (line.lengthMm <= machine.maxLengthMm) return [];
  return [`${line.lengthMm} mm is longer than the ${machine.maxLengthMm} mm that ${machine.id} takes.`];
}
