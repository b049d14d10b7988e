import type { Settings } from '../../../core/shop/settings.ts';
import { formatMoney } from '../../../core/units/money.ts';
import { Combo, Select } from '../../ui/choice.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { Fields, Group } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';
import { zonesWith } from './time-zones.ts';

/** ISO 4217, by code and name; null is kept until the shop says which. */
const NO_CURRENCY = 'none';
const currencyNames = new Intl.DisplayNames('en', { type: 'currency' });
const currencies = [
  { id: NO_CURRENCY, name: 'not set' },
  ...Intl.supportedValuesOf('currency').map((id) => ({ id, name: `${id}, ${currencyNames.of(id) ?? ''}` })),
];

/** Name, clock, units and currency. */
export function ShopFields({ form }: { form: Form<Settings> }) {
  const { entries, errors, set } = form;
  return (
    <Group title="Name, clock, units and currency">
      <Fields>
        <TextField
          label="Shop name"
          value={entries.name}
          onChange={(name) => set({ name })}
          error={errors.name}
        />
        <Combo
          label="Time zone"
          options={zonesWith(entries.timeZone)}
          value={entries.timeZone}
          onChange={(timeZone) => set({ timeZone })}
          help="of the clock on the shop’s wall; found by city or country"
          error={errors.timeZone}
        />
        <Select
          label="Units"
          options={[
            { id: 'in', name: 'inches' },
            { id: 'mm', name: 'millimetres' },
          ]}
          value={entries.units}
          onChange={(units) => set({ units: units as Settings['units'] })}
          help={`paper is ${entries.units === 'in' ? 'Letter' : 'A4'}; both may be typed`}
          error={errors.units}
        />
        <Select
          label="Decimal mark"
          options={[
            { id: 'point', name: 'point, as 9.5' },
            { id: 'comma', name: 'comma, as 9,5' },
          ]}
          value={entries.decimals}
          onChange={(decimals) => set({ decimals: decimals as Settings['decimals'] })}
          help="how figures are written; what can be read in two ways is asked"
          error={errors.decimals}
        />
        <Combo
          label="Currency"
          options={currencies}
          value={entries.currency ?? NO_CURRENCY}
          onChange={(id) => set({ currency: id === NO_CURRENCY ? null : id })}
          help={
            entries.currency === null
              ? 'not set: amounts stand as plain figures'
              : `amounts are shown like ${formatMoney(123_450, entries.currency)}; setting it converts none`
          }
          error={errors.currency}
        />
        <GirthField form={form} />
      </Fields>
    </Group>
  );
}

const GirthField = ({ form: { entries, set } }: { form: Form<Settings> }) => (
  <Select
    label="Girth"
    options={[
      { id: 'computed', name: 'bends deducted' },
      { id: 'outsideSum', name: 'outsides added up' },
    ]}
    value={entries.girthRule}
    onChange={(rule) => set({ girthRule: rule as Settings['girthRule'] })}
    help={
      entries.girthRule === 'computed'
        ? 'what the bends stretch is subtracted'
        : 'simple, and a little long; usual on light gauge'
    }
  />
);
