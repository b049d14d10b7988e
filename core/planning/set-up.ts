import { FIRST_PIECE, FIRST_PIECE_AFTER } from '../estimate/first-piece.ts';
import { setUpFor } from '../limits/tool-limits.ts';
import { blankBasisOf } from '../part/forming.ts';
import { hits } from '../part/girth.ts';
import { isShared, type ToolSet } from '../part/tool-set.ts';
import type { Tool } from '../part/tool.ts';
import type { Attributes, Machine } from '../shop/machine.ts';
import type { Stage } from '../part/stage.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';
import type { Piece } from './piece.ts';

/** What of a line, or of a record of its work, a machine is set up for. */
type Work = Pick<OrderLine, 'materialId' | 'gauge' | 'colourId' | 'partId'>;

/** The value of the attribute `hemming` for a part without hems; no tool can have such a code. */
export const NO_HEMMING = 'no hemming tools';

/** The value of the attributes `tools` and `hemming` where another brake took a tool of them; no tool can have such a code. */
export const TAKEN = 'taken to another brake';

/** Between the codes of die and punch. */
const TOGETHER = ' + ';

/** The value of the attribute `tools`. */
export const toolSetValue = (die: Pick<Tool, 'id'>, punch: Pick<Tool, 'id'>): string =>
  `${die.id}${TOGETHER}${punch.id}`;

/** The values a changeover can depend on: the shear sees the metal, the brake also the profile. */
export function attributesOf(stage: Stage, work: Work): Attributes {
  const metal = { material: work.materialId, gauge: work.gauge, colour: work.colourId };
  return stage === 'shear' ? metal : { ...metal, profile: work.partId };
}

/** The same with the tools that a brake sets up: die and punch, which stay together, and hemming tools or none. */
export const withTools = (attributes: Attributes, tools: ToolSet | null): Attributes =>
  tools === null
    ? attributes
    : {
        ...attributes,
        tools: toolSetValue(tools.die, tools.punch),
        hemming: tools.hemming?.id ?? NO_HEMMING,
      };

/** A machine as it is set up for a piece, and the tools that it takes; null where none are on record or fit. */
export function setUpOn(
  shop: Shop,
  machine: Machine,
  { part, material, gauge }: Pick<Piece, 'part' | 'material' | 'gauge'>,
  lengthMm: number,
): { readonly machine: Machine; readonly tools: ToolSet | null } {
  const { partRules } = shop.settings;
  const asked = { part, material, gauge, lengthMm, partRules, ...blankBasisOf(shop) };
  const { machine: setUp, choice } = setUpFor(asked, machine);
  return { machine: setUp, tools: hits(part.profile) === 0 ? null : (choice?.set ?? null) };
}

/** What work asks for on a machine, tools included, as far as its part and metal are still there. */
export function attributesOn(
  shop: Shop,
  machine: Machine,
  work: Work & Pick<OrderLine, 'lengthMm'>,
): Attributes {
  const attributes = attributesOf(machine.stage, work);
  if (shop.tool.length === 0) return attributes;
  const part = shop.part.find(({ id }) => id === work.partId);
  const material = shop.material.find(({ id }) => id === work.materialId);
  const gauge = material?.gauges.find(({ label }) => label === work.gauge);
  if (!part || !material || !gauge) return attributes;
  return withTools(attributes, setUpOn(shop, machine, { part, material, gauge }, work.lengthMm).tools);
}

/** A value of the attributes `tools` and `hemming` as people say it: the tools' names, a code where its tool has gone. */
export const toolsName = (tools: ReadonlyMap<string, { readonly name: string }>, value: string): string =>
  value
    .split(TOGETHER)
    .map((id) => tools.get(id)?.name ?? id)
    .join(', ');

/** What of a brake a tool is set up with. */
export const attributeOf = ({ kind }: Pick<Tool, 'kind'>): 'tools' | 'hemming' =>
  kind === 'hemming' ? 'hemming' : 'tools';

/**
 * Of the tools that brakes share, by their codes, the attributes that are changed over when one has to be fetched: with die
 * or punch, the first piece too.
 */
export const sharedPartOf = ({ tool }: Pick<Shop, 'tool'>): Record<string, string[]> =>
  Object.fromEntries(
    tool.filter(isShared).map((one) => {
      const attribute = attributeOf(one);
      const first = FIRST_PIECE_AFTER.includes(attribute) ? [FIRST_PIECE] : [];
      return [one.id, [attribute, ...first]];
    }),
  );

/**
 * What of a brake's state is not there any more when another brake is set up.
 * @param state what the brake was set up for
 * @param asked what the other one is set up for
 * @returns the attributes whose shared tools the other one took, each `TAKEN`
 */
export function takenFrom(shop: Shop, state: Attributes | null, asked: Attributes): Attributes {
  const shared = new Set(shop.tool.filter(isShared).map(({ id }) => id));
  const there = new Set(codesIn(asked.tools).concat(codesIn(asked.hemming)));
  const gone = (['tools', 'hemming'] as const).filter((name) =>
    codesIn(state?.[name]).some((id) => shared.has(id) && there.has(id)),
  );
  return Object.fromEntries(gone.map((name) => [name, TAKEN]));
}

const codesIn = (value: string | undefined): string[] => value?.split(TOGETHER) ?? [];

/** The tools of a set that another brake may need at the same time, by their codes. */
export const sharedTools = (tools: ToolSet | null): string[] =>
  tools === null
    ? []
    : [tools.die, tools.punch, tools.hemming].flatMap((tool) => (tool && isShared(tool) ? [tool.id] : []));
