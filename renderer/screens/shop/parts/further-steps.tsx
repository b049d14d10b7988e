import { standard } from '../../../../core/estimate/standards.ts';
import type { FurtherStep } from '../../../../core/part/further-step.ts';
import type { Part } from '../../../../core/part/part.ts';
import { FURTHER_STAGES, shortStageName, stepTitle, type FurtherStage } from '../../../../core/part/stage.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { CheckBox } from '../../../ui/check-box.tsx';
import { Select } from '../../../ui/choice.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import type { FieldErrors } from '../../../form/field-errors.ts';
import styles from '../../../form/form.module.css';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { without, withEntry } from '../../../form/list.ts';

interface Props {
  shop: Shop;
  steps: Part['steps'];
  errors: FieldErrors;
  onChange: (steps: Part['steps']) => void;
}

const ANY = 'any';

/**
 * What a part needs besides shearing and bending: a box for each step that the shop has a bench or an outside shop for, or
 * the part asks for already. A shop without sees nothing of it.
 */
export function FurtherSteps({ shop, steps, errors, onChange }: Props) {
  const offered = FURTHER_STAGES.filter(
    (stage) => placesFor(shop, stage).length > 0 || steps.some((step) => step.stage === stage),
  );
  if (offered.length === 0) return null;
  return (
    <Group title="Further steps" note="Done in this order, notching before bending, all others after it.">
      {errors['steps'] && <p className={styles.warning}>{errors['steps']}</p>}
      {offered.map((stage) => {
        const at = steps.findIndex((step) => step.stage === stage);
        return (
          <div key={stage} role="group" aria-label={stepTitle[stage]}>
            <CheckBox
              label={stepTitle[stage]}
              isSelected={at >= 0}
              onChange={(wanted) => onChange(wanted ? [...steps, freshStep(stage)] : without(steps, at))}
            />
            {at >= 0 && (
              <StepFields
                shop={shop}
                step={steps[at]!}
                errorOf={(field) => errors[`steps.${at}.${field}`]}
                onChange={(patch) => onChange(withEntry(steps, at, patch))}
              />
            )}
          </div>
        );
      })}
    </Group>
  );
}

const freshStep = (stage: FurtherStage): FurtherStep => ({
  ...{ stage, placeId: null, secondsPerPiece: null, days: null, note: '' },
});

const placesFor = ({ machine }: Shop, stage: FurtherStage) => machine.filter((one) => one.stage === stage);

interface StepProps {
  shop: Shop;
  step: FurtherStep;
  errorOf: (field: keyof FurtherStep) => string | undefined;
  onChange: (patch: Partial<FurtherStep>) => void;
}

function StepFields({ shop, step, errorOf, onChange }: StepProps) {
  const places = placesFor(shop, step.stage);
  return (
    <Fields>
      {(places.length > 1 || step.placeId !== null) && (
        <Select
          label="Where"
          options={[
            { id: ANY, name: `any ${shortStageName(step.stage)}` },
            ...places.map(({ id, name }) => ({ id, name: `${name} (${id})` })),
          ]}
          value={step.placeId ?? ANY}
          onChange={(id) => onChange({ placeId: id === ANY ? null : id })}
          error={errorOf('placeId')}
        />
      )}
      {step.stage === 'outside' ? (
        <NumberField
          label="Away"
          whole
          unit="days"
          value={step.days ?? NaN}
          placeholder={usual(shop, step, 'days')}
          onChange={(days, empty) => onChange({ days: empty ? null : days })}
          help="days on which the outside shop is open; empty: as it usually takes"
          error={errorOf('days')}
        />
      ) : (
        <NumberField
          label="Each piece"
          unit="s"
          value={step.secondsPerPiece ?? NaN}
          placeholder={usual(shop, step, 'perPiece')}
          onChange={(seconds, empty) => onChange({ secondsPerPiece: empty ? null : seconds })}
          help="empty: as the bench usually takes"
          error={errorOf('secondsPerPiece')}
        />
      )}
      <TextField
        label="What is to be done"
        value={step.note}
        onChange={(note) => onChange({ note })}
        error={errorOf('note')}
      />
    </Fields>
  );
}

/** The standard of where it would be done, where that is one place. */
function usual(shop: Shop, { stage, placeId }: FurtherStep, key: string): string {
  const places = placesFor(shop, stage).filter(({ id }) => placeId === null || id === placeId);
  const figures = new Set(places.map((place) => standard(place, key)));
  return figures.size === 1 ? String([...figures][0]) : 'usual';
}
