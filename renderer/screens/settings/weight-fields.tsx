import type { ObjectiveWeights, Settings } from '../../../core/shop/settings.ts';
import { NumberField } from '../../ui/number-field.tsx';
import { Select } from '../../ui/choice.tsx';
import { Fields, Group } from '../../form/form-frame.tsx';
import type { Form } from '../../form/use-form.ts';
import { presetOf, presets, weightsInWords } from './weights.ts';
import styles from './settings.module.css';

const OWN = 'own';
const labels: Readonly<Record<keyof ObjectiveWeights, string>> = {
  lateness: 'An hour late',
  changeover: 'An hour of changeover',
  flow: 'An hour in the shop',
  calm: 'An hour moved',
  material: 'Stock worth 100.00',
};

/** What a good plan is: how its terms are weighed, in numbers and in words. */
export function WeightFields({ form: { entries, errors, set } }: { form: Form<Settings> }) {
  const { weights } = entries;
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
      title="What a good plan is"
      note="Rules are never broken for quality. Between plans that keep them, the one with the lowest sum of weight × hours wins; stock counts by its cost, in the money its prices are given in, when runs of one metal could be joined."
    >
      <Fields>
        <Select
          label="Weigh"
          options={choices}
          value={preset?.id ?? OWN}
          onChange={choose}
          help={preset?.words}
        />
        {(Object.keys(labels) as (keyof ObjectiveWeights)[]).map((key) => (
          <NumberField
            key={key}
            label={labels[key]}
            formatOptions={{ maximumFractionDigits: 4 }}
            value={weights[key]}
            onChange={(value) => set({ weights: { ...weights, [key]: value } })}
            error={errors[`weights.${key}`]}
          />
        ))}
      </Fields>
      <ul className={styles.words}>
        {weightsInWords(weights).map((words) => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </Group>
  );
}
