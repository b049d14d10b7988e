import { defaultChangeover } from '../../../../core/estimate/changeover.ts';
import { TIMES_EDITION } from '../../../../core/estimate/standards.ts';
import { attribute, type Attribute, type Attributes, type Machine } from '../../../../core/shop/machine.ts';
import { isFurther, type Stage } from '../../../../core/part/stage.ts';
import { NO_HEMMING, toolSetValue } from '../../../../core/planning/set-up.ts';
import { hasTools } from '../../../../core/limits/tool-limits.ts';
import type { Tool } from '../../../../core/part/tool.ts';
import { gaugeName } from '../../../../core/shop/metal-name.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import type { Option } from '../../../ui/choice.tsx';
import { withoutKey } from '../../../form/list.ts';

/** At a shear never; at a brake only where its tools are on record, or a time was given for them. */
const ofTools: readonly Attribute[] = ['tools', 'hemming'];

/**
 * What a changeover of a machine can depend on: the shear never sees a profile, the brake does not mind the colour, and its
 * tools count once they are on record.
 */
export function attributesAt(shop: Shop, machine: Machine): Attribute[] {
  if (machine.stage === 'shear')
    return attribute.options.filter((name) => name !== 'profile' && !ofTools.includes(name));
  const known = hasTools(machine, shop.tool);
  return attribute.options.filter(
    (name) =>
      name !== 'colour' &&
      (!ofTools.includes(name) || known || machine.changeover.attributes[name] !== undefined),
  );
}

/** A new machine: the stage's usual changeovers, limits still to be taken from its plate. */
export function freshMachine(shop: Shop, stage: Stage): Machine {
  const [shear, brake] = [stage === 'shear', stage === 'brake'];
  const limit = isFurther(stage) ? null : NaN;
  return {
    id: '',
    name: '',
    stage,
    maxLengthMm: limit,
    maxThicknessMm: limit,
    tonnes: brake ? NaN : null,
    dieOpeningMm: brake ? NaN : null,
    betweenFramesMm: null,
    backGaugeMm: shear ? { min: NaN, max: NaN } : null,
    minStripMm: shear ? NaN : null,
    crew: 1,
    calendarId: shop.calendar[0]?.id ?? '',
    changeover: defaultChangeover(stage),
    standards: {},
    timesEdition: TIMES_EDITION,
    state: null,
    revision: 0,
  };
}

/** The values an attribute can take in this shop, named. */
export function valuesOf(shop: Shop, name: Attribute, materialId?: string): Option[] {
  switch (name) {
    case 'material':
      return shop.material.map(({ id, name: text }) => ({ id, name: text }));
    case 'gauge': {
      const materials = shop.material.filter((m) => materialId === undefined || m.id === materialId);
      const labels = new Set(materials.flatMap((m) => m.gauges.map((g) => g.label)));
      return [...labels].map((label) => ({ id: label, name: gaugeName(label) }));
    }
    case 'colour':
      return shop.colour.map(({ id, name: text, hex }) => ({ id, name: text, swatch: hex }));
    case 'profile':
      return shop.part.map(({ id, name: text }) => ({ id, name: text }));
    case 'tools':
      return toolsOfKind(shop, 'die').flatMap((die) =>
        toolsOfKind(shop, 'punch')
          .filter((punch) => punch.machineIds.some((id) => die.machineIds.includes(id)))
          .map((punch) => ({ id: toolSetValue(die, punch), name: `${die.name}, ${punch.name}` })),
      );
    case 'hemming':
      return [
        { id: NO_HEMMING, name: NO_HEMMING },
        ...toolsOfKind(shop, 'hemming').map(({ id, name: text }) => ({ id, name: text })),
      ];
  }
}

const toolsOfKind = (shop: Shop, kind: Tool['kind']): Tool[] =>
  shop.tool.filter((tool) => tool.kind === kind);

/** The changeover seconds of one attribute; null: a change of it costs nothing. */
export const withChangeover = (
  { changeover }: Machine,
  name: Attribute,
  seconds: number | null,
): Machine['changeover'] => ({
  ...changeover,
  attributes: withKey(changeover.attributes, name, seconds),
});

/** One standard of its own, or (null) back to the stage's default. */
export const withStandard = (
  { standards }: Machine,
  key: string,
  value: number | null,
): Machine['standards'] => withKey(standards, key, value);

/** What is set up now; null takes one attribute back to unknown. A machine of which nothing is known has no state. */
export function withState({ state }: Machine, name: Attribute, value: string | null): Machine['state'] {
  const next = withKey<Attributes>(state ?? {}, name, value);
  return Object.keys(next).length === 0 ? null : next;
}

const withKey = <T extends object>(object: T, key: keyof T, value: T[keyof T] | null): T =>
  value === null ? withoutKey(object, key) : { ...object, [key]: value };

/** The next free downtime code of a machine, "B1-2". */
export function nextDowntimeId(shop: Shop, machineId: string): string {
  const taken = new Set(shop.downtime.map((d) => d.id));
  let number = 1;
  while (taken.has(`${machineId}-${number}`)) number += 1;
  return `${machineId}-${number}`;
}
