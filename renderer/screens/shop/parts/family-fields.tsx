import { Plus, X } from 'lucide-react';
import type { Pattern } from '../../../../core/part/family.ts';
import type { Part } from '../../../../core/part/part.ts';
import type { LengthUnits } from '../../../../core/units/length.ts';
import { useDecimals } from '../../../ui/decimals.ts';
import { formatLength } from '../../../../core/units/length.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckBox } from '../../../ui/check-box.tsx';
import { IconButton } from '../../../ui/icon-button.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import type { FieldErrors } from '../../../form/field-errors.ts';
import styles from '../../../form/form.module.css';
import { Group } from '../../../form/form-frame.tsx';
import { without, withEntry } from '../../../form/list.ts';
import { Length } from '../../../form/parsed-field.tsx';
import {
  addDimension,
  addSize,
  freshFamily,
  ownLength,
  removeDimension,
  toggleFlange,
  withLength,
  withSize,
} from './family-edit.ts';
import look from './parts.module.css';

interface Props {
  part: Part;
  units: LengthUnits;
  errors: FieldErrors;
  onChange: (family: Pattern | null) => void;
}

/** The same shape in other sizes: which flanges a named dimension sets, and a row of lengths for each size. */
export function FamilyFields(props: Props) {
  const { part, errors, onChange } = props;
  const { family } = part;
  if (family?.is !== 'pattern')
    return (
      <Group
        title="Sizes"
        note="The same shape in other sizes: name the lengths that differ, and each row of a small table becomes a part."
      >
        <div className={styles.ends}>
          <Button small icon={Plus} onPress={() => onChange(freshFamily(part.profile))}>
            Make a family of sizes
          </Button>
        </div>
      </Group>
    );
  return (
    <Group
      title="Sizes"
      note="Each size is a part of its own. What you change on this form, its shape, hems and bend order, changes in all of them."
      end={
        <Button small onPress={() => onChange(null)}>
          End the family
        </Button>
      }
    >
      {errors.family && <p className={styles.warning}>{errors.family}</p>}
      <Dimensions {...props} family={family} />
      <Sizes {...props} family={family} />
    </Group>
  );
}

type Fields = Props & { family: Pattern };

function Dimensions({ part, family, errors, onChange }: Fields) {
  const { dimensions } = family;
  return (
    <>
      {dimensions.map((dimension, i) => (
        <div key={i} className={look.dimension} role="group" aria-label={`Dimension ${dimension.name}`}>
          <TextField
            label="Dimension"
            value={dimension.name}
            onChange={(name) => onChange({ ...family, dimensions: withEntry(dimensions, i, { name }) })}
            error={errors[`family.dimensions.${i}.name`]}
          />
          <div className={look.flanges} role="group" aria-label={`Flanges that ${dimension.name} sets`}>
            {part.profile.flangesMm.map((_, flange) => (
              <CheckBox
                key={flange}
                label={`flange ${flange + 1}`}
                isSelected={dimension.flanges.includes(flange + 1)}
                onChange={() => onChange(toggleFlange(family, i, flange + 1))}
              />
            ))}
            {errors[`family.dimensions.${i}.flanges`] && (
              <p className={styles.warning}>{errors[`family.dimensions.${i}.flanges`]}</p>
            )}
          </div>
          {dimensions.length > 1 && (
            <div className={look.remove}>
              <IconButton
                label={`Remove dimension ${dimension.name}`}
                icon={X}
                small
                onPress={() => onChange(removeDimension(family, i))}
              />
            </div>
          )}
        </div>
      ))}
      <div className={styles.ends}>
        <Button small icon={Plus} onPress={() => onChange(addDimension(family))}>
          Another dimension
        </Button>
        <Button small icon={Plus} onPress={() => onChange(addSize(part, family))}>
          Another size
        </Button>
      </div>
    </>
  );
}

function Sizes({ part, units, family, errors, onChange }: Fields) {
  const decimals = useDecimals();
  const own = family.dimensions.map(
    ({ name, flanges }) =>
      `${name} ${formatLength(ownLength(part.profile, flanges) || 0, { units, decimals })}`,
  );
  return (
    <>
      <p className={styles.note}>{`${part.id || 'This part'} itself: ${own.join(', ')}.`}</p>
      {family.sizes.map((size, i) => (
        <div key={i} className={look.size} role="group" aria-label={`Size ${i + 2}`}>
          <TextField
            label="Code"
            value={size.partId}
            onChange={(partId) => onChange(withSize(family, i, { partId }))}
            error={errors[`family.sizes.${i}.partId`]}
          />
          <TextField
            label="Name"
            value={size.name}
            onChange={(name) => onChange(withSize(family, i, { name }))}
            error={errors[`family.sizes.${i}.name`]}
          />
          {family.dimensions.map(({ name }, d) => (
            <Length
              key={d}
              label={name}
              units={units}
              value={size.lengthsMm[d] ?? NaN}
              onChange={(mm) => onChange(withLength(family, i, d, mm))}
              error={errors[`family.sizes.${i}.lengthsMm.${d}`]}
            />
          ))}
          <div className={look.remove}>
            <IconButton
              label={`Remove size ${size.partId}`}
              icon={X}
              small
              onPress={() => onChange({ ...family, sizes: without(family.sizes, i) })}
            />
          </div>
        </div>
      ))}
    </>
  );
}
