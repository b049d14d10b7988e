import { RotateCcw } from 'lucide-react';
import { standard, standardsOf, type Standard } from '../../../../core/estimate/standards.ts';
import type { Machine } from '../../../../core/shop/machine.ts';
import { placeOf } from '../../../router.ts';
import { IconButton } from '../../../ui/icon-button.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { Group } from '../../../form/form-frame.tsx';
import styles from '../../../form/form.module.css';
import type { Form } from '../../../form/use-form.ts';
import { withStandard } from './machine-edit.ts';
import look from './machines.module.css';

const unitName: Readonly<Record<Standard['unit'], string>> = {
  s: 's',
  's/kg': 's/kg',
  count: '×',
  mm: 'mm',
  kg: 'kg',
  share: '',
};

const shown = ({ unit }: Standard, value: number): string =>
  unit === 'share' ? `${Math.round(value * 100)} %` : `${value} ${unitName[unit]}`;

/** What each element of the work takes here: default, its source, and the shop's own figure. */
export function StandardFields({ form }: { form: Form<Machine> }) {
  const { entries, errors, set } = form;
  const change = (key: string, value: number | null) => set({ standards: withStandard(entries, key, value) });
  return (
    <Group
      title="Time standards"
      note="Every estimate is made from these. Defaults are starting points: time your own work and put it in."
      end={<a href={placeOf('learning', entries.id)}>What finished work shows</a>}
    >
      <table className={look.standards}>
        <thead>
          <tr>
            <th scope="col">Element of work</th>
            <th scope="col">Here</th>
            <th scope="col">Default</th>
            <th scope="col">From – to</th>
            <th scope="col">Source of the default</th>
          </tr>
        </thead>
        <tbody>
          {standardsOf(entries.stage).map((one) => (
            <tr key={one.key}>
              <th scope="row">{one.label}</th>
              <td>
                <span className={look.here}>
                  <NumberField
                    aria-label={one.label}
                    label=""
                    unit={unitName[one.unit]}
                    formatOptions={one.unit === 'share' ? { style: 'percent' } : { maximumFractionDigits: 2 }}
                    value={standard(entries, one.key)}
                    onChange={(value) => change(one.key, value)}
                    error={errors[`standards.${one.key}`]}
                  />
                  {one.key in entries.standards && (
                    <IconButton
                      label={`Back to the default of ${shown(one, one.default)}`}
                      icon={RotateCcw}
                      small
                      onPress={() => change(one.key, null)}
                    />
                  )}
                </span>
              </td>
              <td>{shown(one, one.default)}</td>
              <td>{`${shown(one, one.low)} – ${shown(one, one.high)}`}</td>
              <td className={styles.note}>{one.source}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Group>
  );
}
