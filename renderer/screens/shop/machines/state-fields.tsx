import type { Attribute } from '../../../../core/shop/machine.ts';
import { Select } from '../../../ui/choice.tsx';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { attributesAt, valuesOf, withState } from './machine-edit.ts';
import type { MachineFields } from './limit-fields.tsx';

const UNKNOWN = '?';

export const attributeName: Readonly<Record<Attribute, string>> = {
  material: 'Material',
  gauge: 'Gauge',
  colour: 'Colour',
  profile: 'Profile',
  tools: 'Die and punch',
  hemming: 'Hemming tools',
};

/** What stands on the machine now: the plan's first changeover starts from here. */
export function StateFields({ shop, form }: MachineFields) {
  const { entries, set } = form;
  return (
    <Group
      title="Set up now"
      note="The first changeover of the plan starts from here. What is not known costs nothing."
    >
      <Fields>
        {attributesAt(shop, entries).map((name) => (
          <Select
            key={name}
            label={attributeName[name]}
            options={[{ id: UNKNOWN, name: 'not known' }, ...valuesOf(shop, name, entries.state?.material)]}
            value={entries.state?.[name] ?? UNKNOWN}
            onChange={(value) => set({ state: withState(entries, name, value === UNKNOWN ? null : value) })}
          />
        ))}
      </Fields>
    </Group>
  );
}
