import { KN_PER_TONNE } from '../../../../core/part/tonnage.ts';
import { toolKind, type Tool } from '../../../../core/part/tool.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { formatLength, MM_PER_FOOT, type LengthUnits } from '../../../../core/units/length.ts';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { Length } from '../../../form/parsed-field.tsx';
import { CodeField, RowFrame } from '../../../form/row-frame.tsx';
import { Section } from '../../../form/section.tsx';
import { useRowForm, type RowFormProps } from '../../../form/use-row-form.ts';
import type { Form } from '../../../form/use-form.ts';
import { CheckBox } from '../../../ui/check-box.tsx';
import { Select } from '../../../ui/choice.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import styles from '../../../form/form.module.css';
import { figuresOf, freshTool } from './tool-edit.ts';

const kindName: Readonly<Record<Tool['kind'], string>> = {
  die: 'die',
  punch: 'punch',
  hemming: 'hemming tools',
};

export const Tools = ({ shop }: { shop: Shop }) => (
  <Section
    kind="tool"
    path="tools"
    noun="tool"
    rows={shop.tool}
    entry={({ id, name, kind, openingMm, machineIds }) => ({
      title: name,
      detail: [
        id,
        openingMm === null ? kindName[kind] : `V ${formatLength(openingMm, shop.settings)}`,
        machineIds.join(', '),
      ].join(' · '),
    })}
    fresh={() => freshTool(shop)}
    purpose="Dies, punches and hemming tools. Once a die and a punch of a brake are here, they decide what it can bend, in which V, and what is changed over; until then it bends in the V of its own form."
    form={(row, isNew, onSaved) => <ToolForm shop={shop} row={row} isNew={isNew} onSaved={onSaved} />}
  />
);

function ToolForm(props: RowFormProps<'tool'>) {
  const form = useRowForm('tool', props);
  const { entries, errors, set } = form;
  const { units } = props.shop.settings;
  return (
    <RowFrame kind="tool" noun="tool" form={form} {...props}>
      <Fields>
        <CodeField form={form} isNew={props.isNew} />
        <TextField label="Name" value={entries.name} onChange={(name) => set({ name })} error={errors.name} />
        <Select
          label="Kind"
          options={toolKind.options.map((id) => ({ id, name: kindName[id] }))}
          value={entries.kind}
          onChange={(kind) => set(figuresOf(kind as Tool['kind']))}
          error={errors.kind}
        />
        <KindFields form={form} units={units} />
        <Length
          label="Length"
          units={units}
          value={entries.lengthMm}
          onChange={(lengthMm) => set({ lengthMm })}
          help="of all its pieces, set up side by side"
          error={errors.lengthMm}
        />
        <Rating form={form} units={units} />
        <TextField label="Note" value={entries.note} onChange={(note) => set({ note })} error={errors.note} />
      </Fields>
      <Brakes shop={props.shop} form={form} />
    </RowFrame>
  );
}

interface ToolFields {
  form: Form<Tool>;
  units: LengthUnits;
}

function KindFields({ form: { entries, errors, set }, units }: ToolFields) {
  const { kind } = entries;
  return (
    <>
      {kind === 'die' && (
        <Length
          label="V opening"
          units={units}
          value={entries.openingMm ?? NaN}
          onChange={(openingMm) => set({ openingMm })}
          error={errors.openingMm}
        />
      )}
      {kind !== 'hemming' && (
        <NumberField
          label="Angle"
          unit="°"
          value={entries.angleDeg ?? NaN}
          onChange={(angleDeg) => set({ angleDeg })}
          help="between its flanks; it bends no sharper"
          error={errors.angleDeg}
        />
      )}
      {kind === 'punch' && (
        <>
          <Length
            label="Tip radius"
            units={units}
            value={entries.radiusMm ?? NaN}
            placeholder="not known"
            onChange={(mm, empty) => set({ radiusMm: empty ? null : mm })}
            error={errors.radiusMm}
          />
          <CheckBox
            label="Gooseneck"
            isSelected={entries.gooseneck}
            onChange={(gooseneck) => set({ gooseneck })}
          />
        </>
      )}
    </>
  );
}

/** Typed by the foot or the metre, kept in kN/m. */
function Rating({ form: { entries, errors, set }, units }: ToolFields) {
  const knPerM = units === 'in' ? KN_PER_TONNE / (MM_PER_FOOT / 1000) : KN_PER_TONNE;
  return (
    <NumberField
      label="Rating"
      value={entries.ratingKnPerM === null ? NaN : entries.ratingKnPerM / knPerM}
      placeholder="not known"
      onChange={(tonnes, empty) => set({ ratingKnPerM: empty ? null : tonnes * knPerM })}
      help={`metric tonnes a ${units === 'in' ? 'foot' : 'metre'}, as stamped on it or by its maker`}
      error={errors.ratingKnPerM}
    />
  );
}

function Brakes({ shop, form: { entries, errors, set } }: { shop: Shop; form: Form<Tool> }) {
  const brakes = shop.machine.filter(({ stage }) => stage === 'brake');
  const { machineIds } = entries;
  const change = (id: string, fits: boolean) =>
    set({ machineIds: fits ? [...machineIds, id] : machineIds.filter((other) => other !== id) });
  return (
    <Group
      title="Brakes that it fits"
      note="A tool that fits several is shared: the plan has it at one of them at a time."
    >
      {errors.machineIds && <p className={styles.warning}>{errors.machineIds}</p>}
      {brakes.length === 0 && <p className={styles.note}>There is no brake yet. Add one in Machines.</p>}
      {brakes.map(({ id, name }) => (
        <CheckBox
          key={id}
          label={`${name} (${id})`}
          isSelected={machineIds.includes(id)}
          onChange={(fits) => change(id, fits)}
        />
      ))}
    </Group>
  );
}
