import type { Settings } from '../../../core/shop/settings.ts';
import { CheckBox } from '../../ui/check-box.tsx';
import { Select } from '../../ui/choice.tsx';
import { NumberField } from '../../ui/number-field.tsx';
import { Fields, Group } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';

const publishingHelp: Readonly<Record<Settings['publishing'], string>> = {
  always: 'what is changed on the board is on the floor at once',
  byHand: 'the board is a draft until “Publish” in the header is pressed',
};

/** The rules a plan keeps besides calendars and machine limits. */
export const PlanningFields = ({ form: { entries, errors, set } }: { form: Form<Settings> }) => (
  <Group title="Rules of the plan">
    <Fields>
      <Select
        label="Floor and paper follow"
        options={[
          { id: 'always', name: 'every change, at once' },
          { id: 'byHand', name: 'the plan published last' },
        ]}
        value={entries.publishing}
        onChange={(id) => set({ publishing: id as Settings['publishing'] })}
        help={publishingHelp[entries.publishing]}
      />
      <NumberField
        label="Leave work that starts within"
        unit="h"
        value={entries.frozenHours}
        onChange={(frozenHours) => set({ frozenHours })}
        help="the frozen window: it stays where it is when the plan is improved"
        error={errors.frozenHours}
      />
      <NumberField
        label="Bending starts after"
        unit="%"
        value={entries.transferShare * 100}
        onChange={(percent) => set({ transferShare: percent / 100 })}
        help="of a line’s blanks are cut; 100 % waits for the whole line"
        error={errors.transferShare}
      />
      {entries.crewLimit !== null && (
        <NumberField
          label="People at work at once"
          whole
          value={entries.crewLimit}
          onChange={(crewLimit) => set({ crewLimit })}
          help="on all machines together"
          error={errors.crewLimit}
        />
      )}
    </Fields>
    <CheckBox
      label="People are short: limit how many work at once"
      isSelected={entries.crewLimit !== null}
      onChange={(limited) => set({ crewLimit: limited ? 4 : null })}
    />
  </Group>
);
