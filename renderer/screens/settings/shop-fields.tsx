import { useMemo } from 'react';
import type { GirthRule } from '../../../core/part/profile.ts';
import { girthChange } from '../../../core/report/girth-change.ts';
import type { Settings } from '../../../core/shop/settings.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { formatLength } from '../../../core/units/length.ts';
import { formatMoney } from '../../../core/units/money.ts';
import { Combo, Select } from '../../ui/choice.tsx';
import { TextField } from '../../ui/text-field.tsx';
import { Fields, Group } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';
import { useShop } from '../../queries/hooks.ts';
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
              : `amounts are shown like ${formatMoney(123_450, entries)}; setting it converts none`
          }
          error={errors.currency}
        />
        <GirthField form={form} />
      </Fields>
    </Group>
  );
}

const GIRTH_RULES: readonly { readonly id: GirthRule; readonly name: string; readonly help: string }[] = [
  {
    id: 'computedByV',
    name: 'bends deducted, radius by the V',
    help: 'what the bends stretch is subtracted; a radius left to the die is what the V makes of the metal',
  },
  {
    id: 'computed',
    name: 'bends deducted, radius of one thickness',
    help: 'what the bends stretch is subtracted; a radius left to the die counts as one thickness',
  },
  { id: 'outsideSum', name: 'outsides added up', help: 'simple, and a little long; usual on light gauge' },
];

/** What the choice would do to the open lines; of the old rule, what the V's own radius would do. */
function changeWords(shop: Shop | undefined, chosen: GirthRule): string {
  if (shop === undefined) return '';
  const kept = shop.settings.girthRule;
  if (chosen === kept && kept !== 'computed') return '';
  const { lines, of, mostMm } = girthChange(shop, chosen === kept ? 'computedByV' : chosen);
  if (of === 0) return '';
  const what =
    lines === 0
      ? 'no open line would be cut otherwise'
      : `${lines} of ${of} open lines would be cut otherwise, by ${formatLength(mostMm, shop.settings)} at most`;
  return chosen === kept ? `; by the V ${what}` : `; ${what}`;
}

function GirthField({ form: { entries, set } }: { form: Form<Settings> }) {
  const { data: shop } = useShop();
  const chosen = entries.girthRule;
  const change = useMemo(() => changeWords(shop, chosen), [shop, chosen]);
  return (
    <Select
      label="Girth"
      options={GIRTH_RULES.map(({ id, name }) => ({ id, name }))}
      value={chosen}
      onChange={(rule) => set({ girthRule: rule as GirthRule })}
      help={`${GIRTH_RULES.find(({ id }) => id === chosen)?.help ?? ''}${change}`}
    />
  );
}
