import { Plus } from 'lucide-react';
import { useState } from 'react';
import { absence as absenceSchema, type Absence } from '../../../../core/shop/machine.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { formatWall } from '../../../../core/time/wall.ts';
import { instant, type Instant } from '../../../../core/units/brand.ts';
import { Button } from '../../../ui/button.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { Group } from '../../../form/form-frame.tsx';
import styles from '../../../form/form.module.css';
import { OutageDialog } from '../../../form/outage-dialog.tsx';
import { OutageRow } from '../../../form/outage-row.tsx';
import { SpanFields } from '../../../form/span-fields.tsx';
import { useForm } from '../../../form/use-form.ts';
import { freshAbsence, peopleOutWords } from './absence-edit.ts';
import look from './calendars.module.css';

/** Hours with fewer people than the shop counts, on whichever machine; nothing where people are not counted. */
export function PeopleOut({ shop, now }: { shop: Shop; now: Instant }) {
  const [edited, setEdited] = useState<Absence | null>(null);
  const { timeZone, crewLimit } = shop.settings;
  if (crewLimit === null) return null;
  const rows = shop.absence.toSorted((a, b) => a.from - b.from);
  const wall = (at: number) => formatWall(instant(at), timeZone);
  return (
    <Group
      title="People out"
      note="Whichever calendar their machines keep. Saved at once, apart from the form."
      end={
        <Button small icon={Plus} onPress={() => setEdited(freshAbsence(shop))}>
          Add people out
        </Button>
      }
    >
      <ul className={look.out}>
        {rows.length === 0 && (
          <li className={styles.note}>{`All ${crewLimit} who work at once are there.`}</li>
        )}
        {rows.map((row) => (
          <OutageRow
            key={row.id}
            kind="absence"
            row={row}
            words={`${peopleOutWords(row.people)}, ${wall(row.from)} to ${wall(row.to)}`}
            name={row.id}
            now={now}
            onChange={() => setEdited(row)}
          />
        ))}
      </ul>
      {edited && (
        <AbsenceDialog key={edited.id} shop={shop} current={edited} onClose={() => setEdited(null)} />
      )}
    </Group>
  );
}

function AbsenceDialog({ shop, current, onClose }: { shop: Shop; current: Absence; onClose: () => void }) {
  const { timeZone, crewLimit } = shop.settings;
  const form = useForm<Absence>({
    name: `absence ${current.id}`,
    shop,
    current,
    schema: absenceSchema,
    command: (row) => ({ do: 'row.save', kind: 'absence', row }),
    fieldOf: ({ field }) => (field === 'people' ? 'people' : ''),
  });
  const { entries, errors, set } = form;
  return (
    <OutageDialog title="People out" form={form} onClose={onClose}>
      <NumberField
        label="How many people"
        whole
        value={entries.people}
        onChange={(people) => set({ people })}
        error={errors.people}
        help={`of ${crewLimit} who work at once, on all machines together`}
      />
      <SpanFields {...{ timeZone, entries, errors, set }} />
    </OutageDialog>
  );
}
