import type { Machine } from '../shop/machine.ts';
import { hemForce } from '../part/hem-force.ts';
import { houseVMm } from '../part/house-v.ts';
import { airBendRadiusMm } from '../part/radius.ts';
import { airBendKn, KN_PER_TONNE } from '../part/tonnage.ts';
import type { Tool } from '../part/tool.ts';
import { chooseTools, isOver, toolsOn, type ToolChoice } from '../part/tool-set.ts';
import { formatTonnesPerLength } from '../units/force.ts';
import { formatLength } from '../units/length.ts';
import { found, type Asked, type Found } from './finding.ts';

/** A brake as it is set up for a part. */
export interface SetUpBrake {
  /** With the V that is set up for it. */
  readonly machine: Machine;
  /** Its tools for the part; null: none are on record, so the V that is usually set up stands. */
  readonly choice: ToolChoice | null;
  /** Force by length on these tools, kN/m: of the bends, and of the hems, 0 without any. */
  readonly bendKnPerM: number;
  readonly hemKnPerM: number;
}

/** A brake's tools count once a die and a punch are on record: a list half entered refuses no part. */
export const hasTools = (machine: Pick<Machine, 'id'>, tools: readonly Tool[]): boolean => {
  const own = toolsOn(machine.id, tools);
  return own.some(({ kind }) => kind === 'die') && own.some(({ kind }) => kind === 'punch');
};

/**
 * A machine as it is set up for a part: a brake with tools on record takes the house V of the metal and gauge, any other
 * machine stays as it is. Force, least flange, order and estimate then go by that V.
 */
export function setUpFor(asked: Asked, machine: Machine): SetUpBrake {
  const { part, gauge, lengthMm, material, tools } = asked;
  const vMm = houseVMm(gauge, asked);
  if (machine.stage !== 'brake' || vMm === null || !hasTools(machine, tools))
    return { machine, choice: null, bendKnPerM: 0, hemKnPerM: 0 };
  const { thicknessMm } = gauge;
  const { tensileMpa } = material;
  const metre = { thicknessMm, lengthMm: 1000, tensileMpa };
  const bendKnPerM = airBendKn({ ...metre, dieOpeningMm: vMm });
  const { startHem, endHem } = part.profile;
  const hemKnPerM = Math.max(0, ...[startHem, endHem].map((hem) => (hem ? hemForce(hem.kind, metre).kn : 0)));
  const vRadiusMm = airBendRadiusMm(vMm, material);
  const bending = { part, vMm, vRadiusMm, lengthMm, bendKnPerM, hemKnPerM };
  const choice = chooseTools(bending, toolsOn(machine.id, tools));
  return { machine: { ...machine, dieOpeningMm: vMm }, choice, bendKnPerM, hemKnPerM };
}

/** Tools that a brake lacks for the part, and those that it has but would overload. */
export function toolLimits(
  { machine, choice, bendKnPerM, hemKnPerM }: SetUpBrake,
  { lengthMm, units }: Asked,
): Found[] {
  if (choice === null) return [];
  if (choice.set === null) {
    const v = formatLength(machine.dieOpeningMm ?? 0, units);
    return choice.lacks.map((what) =>
      found(
        'tools',
        `${machine.name} has ${what} for a piece of ${formatLength(lengthMm, units)} in a V of ${v}.`,
        'Use another brake, or add the tool in Shop, Brake tools.',
      ),
    );
  }
  const loadOf = (knPerM: number): string => formatTonnesPerLength(knPerM / KN_PER_TONNE / 1000, units);
  const { die, punch, hemming } = choice.set;
  const overloaded = (work: string, tool: Tool | null, knPerM: number): Found[] =>
    tool === null || !isOver(tool, knPerM)
      ? []
      : [
          found(
            'tool rating',
            `${work} loads ${tool.name} with ${loadOf(knPerM)}; it stands ${loadOf(tool.ratingKnPerM ?? 0)}.`,
            'Use a wider V, a stronger tool or another brake.',
          ),
        ];
  return [
    ...overloaded('Bending', die, bendKnPerM),
    ...overloaded('Bending', punch, bendKnPerM),
    ...overloaded('Making the hem', hemming, hemKnPerM),
  ];
}
