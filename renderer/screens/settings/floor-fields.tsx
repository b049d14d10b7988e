import type { Settings } from '../../../core/shop/settings.ts';
import { CheckBox } from '../../ui/check-box.tsx';
import { Group } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';

/** What the floor screen asks besides times and pieces. */
export const FloorFields = ({ form: { entries, set } }: { form: Form<Settings> }) => (
  <Group
    title="The floor"
    note="While this is on, the floor screen has a field for a name, which may stay empty. Names are kept in this data file with the operation that was run, and shown to everyone who opens it: on the floor screen and under Learning. Times are fitted to machines, never to people. Switching it off stops the asking; names kept before stay with their operations."
  >
    <CheckBox label="Ask who ran it" isSelected={entries.askWho} onChange={(askWho) => set({ askWho })} />
  </Group>
);
