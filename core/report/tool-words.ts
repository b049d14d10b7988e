import type { ToolSet } from '../part/tool-set.ts';
import { formatLength, type Units } from '../units/length.ts';

/** What is set up on a brake, each tool with its code: "V 8 mm (V8), gooseneck punch 85° (P2), hemming tools (H1)". */
export function toolSetWords({ die, punch, hemming }: ToolSet, units: Units): string {
  const shape = punch.gooseneck ? 'gooseneck punch' : 'punch';
  return [
    `V ${formatLength(die.openingMm ?? 0, units)} (${die.id})`,
    `${shape}${punch.angleDeg === null ? '' : ` ${punch.angleDeg}°`} (${punch.id})`,
    ...(hemming ? [`hemming tools (${hemming.id})`] : []),
  ].join(', ');
}
