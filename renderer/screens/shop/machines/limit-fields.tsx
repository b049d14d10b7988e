import type { Machine } from '../../../../core/shop/machine.ts';
import { isElsewhere, isFurther, stageName, STAGES, type Stage } from '../../../../core/part/stage.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { hasHours } from '../../../../core/time/calendar.ts';
import { Select } from '../../../ui/choice.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { Length } from '../../../form/parsed-field.tsx';
import { CodeField } from '../../../form/row-frame.tsx';
import { Thickness } from '../../../form/stock-fields.tsx';
import type { Form } from '../../../form/use-form.ts';
import { NO_HOURS } from '../calendars/no-hours.ts';

export interface MachineFields {
  shop: Shop;
  form: Form<Machine>;
}

/** Who the machine is and when it is open. */
export function WhoFields({
  shop,
  form,
  isNew,
  onStage,
}: MachineFields & { isNew: boolean; onStage: (stage: Stage) => void }) {
  const { entries, errors, set } = form;
  return (
    <Fields>
      <CodeField form={form} isNew={isNew} />
      <TextField label="Name" value={entries.name} onChange={(name) => set({ name })} error={errors.name} />
      <Select
        label="Kind"
        options={[...STAGES.map((stage) => ({ id: stage, name: stageName[stage] }))]}
        value={entries.stage}
        onChange={(stage) => onStage(stage as Stage)}
        isDisabled={!isNew}
        error={errors.stage}
      />
      <Select
        label="Calendar"
        options={shop.calendar}
        value={entries.calendarId}
        onChange={(calendarId) => set({ calendarId })}
        help={hoursWords(shop, entries.calendarId)}
        error={errors.calendarId}
      />
      {!isElsewhere(entries.stage) && (
        <NumberField
          label="People needed"
          whole
          unit="people"
          value={entries.crew}
          onChange={(crew) => set({ crew })}
          error={errors.crew}
        />
      )}
    </Fields>
  );
}

/** What a calendar without hours means for the machine. */
function hoursWords({ calendar }: Shop, id: string): string | undefined {
  const kept = calendar.find((one) => one.id === id);
  return kept && !hasHours(kept) ? NO_HOURS : undefined;
}

/** What it takes, from its plate. */
export function LimitFields({ shop, form }: MachineFields) {
  const { entries, errors, set } = form;
  const { units } = shop.settings;
  if (isFurther(entries.stage))
    return entries.stage === 'outside' ? null : <BenchLimits form={form} units={units} />;
  const Stage = entries.stage === 'brake' ? BrakeLimits : ShearLimits;
  return (
    <Group
      title="Limits"
      note="From the machine’s plate, in mild steel; harder metal is derated by its strength."
    >
      <Fields>
        <Length
          label="Longest piece"
          units={units}
          value={entries.maxLengthMm ?? NaN}
          onChange={(maxLengthMm) => set({ maxLengthMm })}
          error={errors.maxLengthMm}
        />
        <Thickness
          label="Thickest sheet"
          units={units}
          valueMm={entries.maxThicknessMm ?? NaN}
          onChange={(maxThicknessMm) => set({ maxThicknessMm })}
          error={errors.maxThicknessMm}
        />
        <Stage form={form} units={units} />
      </Fields>
    </Group>
  );
}

interface StageFields {
  form: Form<Machine>;
  units: 'in' | 'mm';
}

const BenchLimits = ({ form: { entries, errors, set }, units }: StageFields) => (
  <Group title="Limits">
    <Fields>
      <Length
        label="Longest piece"
        units={units}
        value={entries.maxLengthMm ?? NaN}
        placeholder="any"
        onChange={(mm, empty) => set({ maxLengthMm: empty ? null : mm })}
        help="empty: any length"
        error={errors.maxLengthMm}
      />
    </Fields>
  </Group>
);

const BrakeLimits = ({ form: { entries, errors, set }, units }: StageFields) => (
  <>
    <NumberField
      label="Force"
      unit="metric tonnes"
      value={entries.tonnes ?? NaN}
      onChange={(tonnes) => set({ tonnes })}
      help={units === 'in' ? 'a US ton is 0.907 metric tonnes' : undefined}
      error={errors.tonnes}
    />
    <Length
      label="Die opening"
      units={units}
      value={entries.dieOpeningMm ?? NaN}
      onChange={(dieOpeningMm) => set({ dieOpeningMm })}
      help="the V usually set up, until dies are entered in Brake tools"
      error={errors.dieOpeningMm}
    />
    <Length
      label="Between side frames"
      units={units}
      value={entries.betweenFramesMm ?? NaN}
      placeholder="not known"
      onChange={(mm, empty) => set({ betweenFramesMm: empty ? null : mm })}
      help="for loads on short pieces; empty: not known"
      error={errors.betweenFramesMm}
    />
  </>
);

function ShearLimits({ form: { entries, errors, set }, units }: StageFields) {
  const travel = entries.backGaugeMm ?? { min: NaN, max: NaN };
  return (
    <>
      <Length
        label="Back gauge from"
        units={units}
        value={travel.min}
        onChange={(min) => set({ backGaugeMm: { ...travel, min } })}
        error={errors['backGaugeMm.min'] ?? errors.backGaugeMm}
      />
      <Length
        label="Back gauge to"
        units={units}
        value={travel.max}
        onChange={(max) => set({ backGaugeMm: { ...travel, max } })}
        error={errors['backGaugeMm.max']}
      />
      <Length
        label="Narrowest strip"
        units={units}
        value={entries.minStripMm ?? NaN}
        onChange={(minStripMm) => set({ minStripMm })}
        help="that the hold-downs still grip"
        error={errors.minStripMm}
      />
    </>
  );
}
