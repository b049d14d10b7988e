import { RotateCcw } from 'lucide-react';
import {
  standard,
  standardFigure,
  standardsOf,
  standardPlaces,
  standardUnit,
  usualFigure,
  type Standard,
} from '../../../../core/estimate/standards.ts';
import type { Machine } from '../../../../core/shop/machine.ts';
import type { Units } from '../../../../core/units/length.ts';
import { placeOf } from '../../../router.ts';
import { IconButton } from '../../../ui/icon-button.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { keptFigure } from '../../../form/kept-figure.ts';
import { Group } from '../../../form/form-frame.tsx';
import styles from '../../../form/form.module.css';
import type { Form } from '../../../form/use-form.ts';
import { withStandard } from './machine-edit.ts';
import look from './machines.module.css';

/** "20 – 90 s" */
function rangeOf(one: Standard, units: Units): string {
  const [low] = standardFigure(one, one.low, units).split(' ');
  return `${low} – ${standardFigure(one, one.high, units)}`;
}

/** What a figure is typed in: shares as percent. */
const typedUnit = (one: Standard, units: Units): { readonly name: string; readonly per: number } =>
  one.unit === 'share' ? { name: '%', per: 0.01 } : standardUnit(one, units.units);

/** What each element of the work takes here: default, its source, and the shop's own figure. */
export function StandardFields({ form, units }: { form: Form<Machine>; units: Units }) {
  return (
    <Group
      title="Time standards"
      note="Every estimate is made from these. Defaults are starting points: time your own work and put it in."
      end={<a href={placeOf('learning', form.entries.id)}>What finished work shows</a>}
    >
      <table className={look.standards}>
        <thead>
          <tr>
            <th scope="col">Element of work</th>
            <th scope="col">This machine</th>
            <th scope="col">Default</th>
            <th scope="col">From – to</th>
            <th scope="col">Source of the default</th>
          </tr>
        </thead>
        <tbody>
          {standardsOf(form.entries).map((one) => (
            <StandardRow key={one.key} one={one} form={form} units={units} />
          ))}
        </tbody>
      </table>
    </Group>
  );
}

function StandardRow({ one, form, units }: { one: Standard; form: Form<Machine>; units: Units }) {
  const { entries, errors, set } = form;
  const { name, per } = typedUnit(one, units);
  const places = standardPlaces(one);
  const present = standard(entries, one.key);
  const usual = standardFigure(one, usualFigure(entries, one), units);
  const change = (value: number | null) => set({ standards: withStandard(entries, one.key, value) });
  return (
    <tr>
      <th scope="row">{one.label[units.units]}</th>
      <td>
        <span className={look.here}>
          <NumberField
            aria-label={one.label[units.units]}
            label=""
            unit={name}
            places={places}
            value={present / per}
            onChange={(typed) => change(keptFigure(present, typed, per, places))}
            error={errors[`standards.${one.key}`]}
          />
          {one.key in entries.standards && (
            <IconButton
              label={`Back to the default of ${usual}`}
              icon={RotateCcw}
              small
              onPress={() => change(null)}
            />
          )}
        </span>
      </td>
      <td>{usual}</td>
      <td>{rangeOf(one, units)}</td>
      <td className={styles.note}>{one.source}</td>
    </tr>
  );
}
