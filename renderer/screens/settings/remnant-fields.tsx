import { USUAL_REMNANTS } from '../../../core/planning/cut-run.ts';
import type { RemnantRule, Settings } from '../../../core/shop/settings.ts';
import { Fields, Group } from '../../form/form-frame.tsx';
import { Length } from '../../form/parsed-field.tsx';
import type { Form } from '../../form/use-form.ts';
import { NumberField } from '../../ui/number-field.tsx';

/** Which offcuts this shop keeps: what is smaller, or more of a size than that, counts as scrap. */
export function RemnantFields({ form: { entries, errors, set } }: { form: Form<Settings> }) {
  const rule = entries.remnants ?? USUAL_REMNANTS;
  const change = (part: Partial<RemnantRule>) => set({ remnants: { ...rule, ...part } });
  return (
    <Group title="Remnants worth keeping">
      <Fields>
        <Length
          label="At least wide"
          units={entries.units}
          value={rule.widthMm}
          onChange={(widthMm) => change({ widthMm })}
          error={errors['remnants.widthMm']}
        />
        <Length
          label="At least long"
          units={entries.units}
          value={rule.lengthMm}
          onChange={(lengthMm) => change({ lengthMm })}
          error={errors['remnants.lengthMm']}
        />
        <NumberField
          label="Of one size at most"
          whole
          min={0}
          max={10_000}
          value={rule.most}
          onChange={(most) => change({ most })}
          error={errors['remnants.most']}
          help="with those in stock; more of a size are scrap"
        />
      </Fields>
    </Group>
  );
}
