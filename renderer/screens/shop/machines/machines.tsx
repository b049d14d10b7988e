import { isElsewhere, stageName, type Stage } from '../../../../core/part/stage.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { formatLength } from '../../../../core/units/length.ts';
import type { Instant } from '../../../../core/units/brand.ts';
import { Section } from '../../../form/section.tsx';
import { useRowForm, type RowFormProps } from '../../../form/use-row-form.ts';
import { RowFrame } from '../../../form/row-frame.tsx';
import { ChangeoverFields } from './changeover-fields.tsx';
import { Downtimes } from './downtimes.tsx';
import { LimitFields, WhoFields } from './limit-fields.tsx';
import { freshMachine } from './machine-edit.ts';
import { StandardFields } from './standard-fields.tsx';
import { StateFields } from './state-fields.tsx';

export const Machines = ({ shop, now }: { shop: Shop; now: Instant }) => (
  <Section
    kind="machine"
    path="machines"
    noun="machine"
    rows={shop.machine}
    entry={(machine) => ({
      title: `${machine.id} ${machine.name}`,
      detail:
        machine.maxLengthMm === null
          ? stageName[machine.stage]
          : `${stageName[machine.stage]}, ${formatLength(machine.maxLengthMm, shop.settings)}`,
    })}
    fresh={() => freshMachine(shop, 'brake')}
    purpose="A shear or a press brake: its limits, hours and times are what a plan is made from. A bench, a person or an outside shop for further steps is added here too. Add a calendar first."
    form={(row, isNew, onSaved) => (
      <MachineForm shop={shop} row={row} isNew={isNew} onSaved={onSaved} now={now} />
    )}
  />
);

function MachineForm({ now, ...props }: RowFormProps<'machine'> & { now: Instant }) {
  const { shop, isNew } = props;
  const form = useRowForm('machine', props);
  const changeStage = (stage: Stage) => {
    const { id, name } = form.entries;
    form.set({ ...freshMachine(shop, stage), id, name });
  };
  const fields = { shop, form };
  return (
    <RowFrame kind="machine" noun="machine" form={form} {...props}>
      <WhoFields {...fields} isNew={isNew} onStage={changeStage} />
      <LimitFields {...fields} />
      {!isElsewhere(form.entries.stage) && <StateFields {...fields} />}
      {!isNew && <Downtimes shop={shop} machine={props.row} now={now} />}
      {!isElsewhere(form.entries.stage) && <ChangeoverFields {...fields} />}
      <StandardFields form={form} units={props.shop.settings} />
    </RowFrame>
  );
}
