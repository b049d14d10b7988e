import type { Settings } from '../../../core/shop/settings.ts';
import { Group } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';
import { CheckBox } from '../../ui/check-box.tsx';

/** Whether lines wait for metal that is on its way. */
export const MetalFields = ({ form: { entries, set } }: { form: Form<Settings> }) => (
  <Group
    title="Metal on its way"
    note="Stock and expected deliveries are given out in the order of the plan. A line that neither has metal for is planned as any other and listed as missing it."
  >
    <CheckBox
      label="A line whose metal is on its way starts when it is due, not before"
      isSelected={entries.awaitMetal}
      onChange={(awaitMetal) => set({ awaitMetal })}
    />
  </Group>
);
