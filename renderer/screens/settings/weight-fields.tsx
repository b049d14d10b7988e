import type { ObjectiveWeights, Settings } from '../../../core/shop/settings.ts';
import { formatMoney, type MoneyStyle } from '../../../core/units/money.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/choice.tsx';
import { Fields, Group } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';
import { presetOf, presets, weightsInWords } from './weights.ts';
import styles from './settings.module.css';

const OWN = 'own';
interface Words {
  readonly label: string;
  readonly help: string;
}

const fieldsIn = (money: MoneyStyle): Readonly<Record<keyof ObjectiveWeights, Words>> => ({
  lateness: { label: 'Hours late', help: 'each hour, times the importance of the order' },
  changeover: { label: 'Changeover', help: 'each hour' },
  flow: { label: 'Time in the shop', help: 'each hour that a line lies there' },
  stability: { label: 'Stability', help: 'each hour that a line ends away from where the plan has it' },
  material: { label: 'Stock cost', help: `each ${formatMoney(10_000, money)}` },
});

/** What matters most: the priorities between plans, in numbers and in words. */
export function WeightFields({ form: { entries, errors, set } }: { form: Form<Settings> }) {
  const { weights } = entries;
  const fields = fieldsIn(entries);
  const preset = presetOf(weights);
  const choices = [
    ...presets.map(({ id, name }) => ({ id, name })),
    ...(preset ? [] : [{ id: OWN, name: 'your own' }]),
  ];
  const choose = (id: string) => {
    const chosen = presets.find((one) => one.id === id);
    if (chosen) set({ weights: chosen.weights });
  };
  return (
    <Group
      title="What matters most"
      note="Pins, hours and machine limits are always kept. Between plans that keep them, the one with the lowest sum of priority × hours wins; stock counts by its cost, in the money its prices are given in, when runs of one metal could be joined."
    >
      <Fields>
        <Select
          label="Priorities"
          options={choices}
          value={preset?.id ?? OWN}
          onChange={choose}
          help={preset?.words}
        />
        {(Object.keys(fields) as (keyof ObjectiveWeights)[]).map((key) => (
          <NumberField
            key={key}
            {...fields[key]}
            places={4}
            value={weights[key]}
            onChange={(value) => set({ weights: { ...weights, [key]: value } })}
            error={errors[`weights.${key}`]}
          />
        ))}
      </Fields>
      <ul className={styles.words}>
        {weightsInWords(weights, entries).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </Group>
  );
}
