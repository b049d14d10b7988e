import { Plus, X } from 'lucide-react';
import type { Hem, Profile } from '../../../../core/part/profile.ts';
import type { LengthUnits } from '../../../../core/units/length.ts';
import { Button } from '../../../ui/button.tsx';
import { Select } from '../../../ui/choice.tsx';
import { IconButton } from '../../../ui/icon-button.tsx';
import { NumberField } from '../../../ui/number-field.tsx';
import type { FieldErrors } from '../../../form/field-errors.ts';
import styles from '../../../form/form.module.css';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { Length } from '../../../form/parsed-field.tsx';
import { ProfileText } from './profile-text.tsx';
import { addFlange, addKick, removeFlange, withBend, withFlange, withGap, withHem } from './profile-edit.ts';

interface Props {
  profile: Profile;
  units: LengthUnits;
  /** Keys begin with "profile.". */
  errors: FieldErrors;
  onChange: (profile: Profile) => void;
}

const directions = [
  { id: 'up', name: 'up' },
  { id: 'down', name: 'down' },
];
type Direction = 'up' | 'down';

/** The cross-section from one edge to the other: flange, bend, flange … with a hem on either edge. */
export function ProfileFields({ profile, units, errors, onChange }: Props) {
  const { flangesMm } = profile;
  return (
    <Group
      title="Profile"
      note="From one edge to the other, seen from the end. A bend is the angle it turns through: a square corner is 90°."
      end={
        <span className={styles.ends}>
          <Button small icon={Plus} onPress={() => onChange(addFlange(profile))}>
            Add flange
          </Button>
          <Button small icon={Plus} onPress={() => onChange(addKick(profile))}>
            Add kick
          </Button>
        </span>
      }
    >
      {errors['profile.bends'] && <p className={styles.warning}>{errors['profile.bends']}</p>}
      <HemFields edge="startHem" label="Hem on the first edge" {...{ profile, units, errors, onChange }} />
      {flangesMm.map((lengthMm, i) => (
        <div key={i} className={styles.line} role="group" aria-label={`Flange ${i + 1}`}>
          <Length
            label={`Flange ${i + 1}`}
            units={units}
            value={lengthMm}
            onChange={(next) => onChange(withFlange(profile, i, next))}
            error={errors[`profile.flangesMm.${i}`]}
          />
          <BendFields at={i} {...{ profile, units, errors, onChange }} />
          {flangesMm.length > 1 && (
            <div className={styles.end}>
              <IconButton
                label={`Remove flange ${i + 1}`}
                icon={X}
                small
                onPress={() => onChange(removeFlange(profile, i))}
              />
            </div>
          )}
        </div>
      ))}
      <HemFields edge="endHem" label="Hem on the last edge" {...{ profile, units, errors, onChange }} />
      <SideFields profile={profile} onChange={onChange} />
      <ProfileText profile={profile} units={units} onChange={onChange} />
    </Group>
  );
}

/** Between which points lengths are given, and where the paint is. */
const SideFields = ({ profile, onChange }: Pick<Props, 'profile' | 'onChange'>) => (
  <Fields>
    <Select
      label="Flanges are measured"
      options={[
        { id: 'outside', name: 'over the outside' },
        { id: 'inside', name: 'inside' },
        { id: 'apex', name: 'to the apex of the bends' },
      ]}
      value={profile.measured}
      onChange={(measured) => onChange({ ...profile, measured: measured as Profile['measured'] })}
    />
    <Select
      label="Painted side"
      options={directions}
      value={profile.paintedSide}
      onChange={(side) => onChange({ ...profile, paintedSide: side as Direction })}
    />
  </Fields>
);

/** The bend after flange `at`; nothing after the last. */
function BendFields({ at, profile, units, errors, onChange }: Props & { at: number }) {
  const bend = profile.bends[at];
  if (!bend) return null;
  const set = (patch: Partial<typeof bend>) => onChange(withBend(profile, at, patch));
  const error = (field: string) => errors[`profile.bends.${at}.${field}`];
  return (
    <>
      <NumberField
        label={`Bend ${at + 1}`}
        unit="°"
        value={bend.angle}
        onChange={(angle) => set({ angle })}
        error={error('angle')}
      />
      <Select
        label="Direction"
        options={directions}
        value={bend.direction}
        onChange={(direction) => set({ direction: direction as Direction })}
      />
      <Length
        label="Inside radius"
        units={units}
        value={bend.radiusMm ?? NaN}
        onChange={(radius, empty) => set({ radiusMm: empty ? null : radius })}
        placeholder="by the die"
        error={error('radiusMm')}
      />
    </>
  );
}

function HemFields({
  edge,
  label,
  profile,
  units,
  errors,
  onChange,
}: Props & { edge: 'startHem' | 'endHem'; label: string }) {
  const hem = profile[edge];
  const change = (patch: Partial<NonNullable<typeof hem>>) =>
    hem && onChange({ ...profile, [edge]: { ...hem, ...patch } });
  return (
    <div className={styles.line} role="group" aria-label={label}>
      <Select
        label={label}
        options={[
          { id: 'none', name: 'none' },
          { id: 'closed', name: 'closed' },
          { id: 'open', name: 'open' },
          { id: 'teardrop', name: 'teardrop' },
        ]}
        value={hem?.kind ?? 'none'}
        onChange={(kind) => onChange(withHem(profile, edge, kind === 'none' ? null : (kind as Hem['kind'])))}
      />
      {hem && (
        <>
          <Length
            label="Length of the lip"
            units={units}
            value={hem.lengthMm}
            onChange={(lengthMm) => change({ lengthMm })}
            error={errors[`profile.${edge}.lengthMm`]}
          />
          <Select
            label="Folds"
            options={directions}
            value={hem.direction}
            onChange={(direction) => change({ direction: direction as Direction })}
          />
          {hem.kind !== 'closed' && (
            <Length
              label={hem.kind === 'open' ? 'Gap' : 'Eye'}
              units={units}
              value={hem.gapMm ?? NaN}
              onChange={(gapMm, empty) =>
                onChange({ ...profile, [edge]: withGap(hem, empty ? null : gapMm) })
              }
              placeholder="one thickness"
              error={errors[`profile.${edge}.gapMm`]}
            />
          )}
        </>
      )}
    </div>
  );
}
