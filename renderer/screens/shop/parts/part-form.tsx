import { FlipHorizontal2, FlipVertical2, Printer } from 'lucide-react';
import { isOrderOf } from '../../../../core/part/bend-steps.ts';
import type { Profile } from '../../../../core/part/profile.ts';
import type { RowOf, Shop } from '../../../../core/shop/state.ts';
import type { LengthUnits } from '../../../../core/units/length.ts';
import { placeOf } from '../../../router.ts';
import { Button } from '../../../ui/button.tsx';
import { CheckBox } from '../../../ui/check-box.tsx';
import { TextField } from '../../../ui/text-field.tsx';
import styles from '../../../form/form.module.css';
import { Fields, Group } from '../../../form/form-frame.tsx';
import { ExtraBlankFields } from '../../../form/extra-blank-fields.tsx';
import { Length } from '../../../form/parsed-field.tsx';
import { CodeField, RowFrame } from '../../../form/row-frame.tsx';
import type { Form } from '../../../form/use-form.ts';
import { useRowForm, type RowFormProps } from '../../../form/use-row-form.ts';
import { partAddress } from '../../print/part-choice.ts';
import { FamilyFields } from './family-fields.tsx';
import { FurtherSteps } from './further-steps.tsx';
import { PartView } from './part-view.tsx';
import { useMetalShown } from './metal-shown.ts';
import look from './parts.module.css';
import { mirrored, turnedOver } from './profile-edit.ts';
import { ProfileFields } from './profile-fields.tsx';

type PartForm = Form<RowOf<'part'>>;

/** The profile and what follows from it: an own bend order goes when the steps are no longer the same. */
const takeProfile = ({ entries, set }: PartForm, profile: Profile) => {
  const { bendOrder } = entries;
  set({ profile, bendOrder: bendOrder && isOrderOf(profile, bendOrder) ? bendOrder : null });
};

export function PartForm(props: RowFormProps<'part'>) {
  const { shop, isNew } = props;
  const form = useRowForm('part', props);
  const { entries, errors, set } = form;
  const { units } = shop.settings;
  const isSize = entries.family?.is === 'size';
  return (
    <RowFrame kind="part" noun="part" form={form} {...props} notCopied={{ family: null }}>
      <Tools shop={shop} form={form} isNew={isNew} />
      <div className={look.split}>
        <div className={look.entries}>
          <WhoFields form={form} isNew={isNew} units={units} isSize={isSize} />
          {entries.family?.is === 'size' ? (
            <OfFamily
              pattern={entries.family.of}
              onLeave={() => set({ family: null })}
              error={errors.family}
            />
          ) : (
            <>
              <ProfileFields
                profile={entries.profile}
                units={units}
                errors={errors}
                onChange={(profile) => takeProfile(form, profile)}
              />
              <FamilyFields
                part={entries}
                units={units}
                errors={errors}
                onChange={(family) => set({ family })}
              />
            </>
          )}
          {!isSize && (
            <FurtherSteps
              shop={shop}
              steps={entries.steps}
              errors={errors}
              onChange={(steps) => set({ steps })}
            />
          )}
          <BlanksOfPart shop={shop} form={form} />
          <Group title="Note">
            <TextField
              label="For the people who make it"
              long
              value={entries.note}
              onChange={(note) => set({ note })}
              error={errors.note}
            />
          </Group>
        </div>
        <PartView shop={shop} part={entries} onOrder={isSize ? null : (bendOrder) => set({ bendOrder })} />
      </div>
    </RowFrame>
  );
}

/** Blanks beyond the pieces, where this part needs others than the shop's usual. */
const BlanksOfPart = ({ shop, form: { entries, errors, set } }: { shop: Shop; form: PartForm }) => (
  <Group title="Blanks beyond the pieces">
    <CheckBox
      label="Others than usual in this shop"
      isSelected={entries.extraBlanks !== null}
      onChange={(own) => set({ extraBlanks: own ? shop.settings.extraBlanks : null })}
    />
    {entries.extraBlanks && (
      <ExtraBlankFields
        value={entries.extraBlanks}
        errors={errors}
        onChange={(extraBlanks) => set({ extraBlanks })}
      />
    )}
  </Group>
);

interface WhoProps {
  form: PartForm;
  isNew: boolean;
  units: LengthUnits;
  /** Its name is the pattern's business. */
  isSize: boolean;
}

const WhoFields = ({ form, form: { entries, errors, set }, isNew, units, isSize }: WhoProps) => (
  <Fields>
    <CodeField form={form} isNew={isNew} />
    <TextField
      label="Name"
      value={entries.name}
      onChange={(name) => set({ name })}
      isDisabled={isSize}
      error={errors.name}
    />
    <Length
      label="Usual length"
      units={units}
      value={entries.lengthMm}
      onChange={(lengthMm) => set({ lengthMm })}
      error={errors.lengthMm}
    />
  </Fields>
);

/** Look at the part from its other side, and print it. */
function Tools({ shop, form, isNew }: { shop: Shop; form: PartForm; isNew: boolean }) {
  const { entries } = form;
  const { chosen } = useMetalShown(shop, entries.id);
  const metal = chosen ? { materialId: chosen.material.id, gauge: chosen.gauge.label } : null;
  const shown = (profile: Profile) => takeProfile(form, profile);
  return (
    <div className={styles.ends}>
      {entries.family === null && (
        <>
          <Button small icon={FlipVertical2} onPress={() => shown(mirrored(entries.profile))}>
            Mirror left and right
          </Button>
          <Button small icon={FlipHorizontal2} onPress={() => shown(turnedOver(entries.profile))}>
            Turn over
          </Button>
        </>
      )}
      {!isNew && !form.changed && (
        <Button
          small
          icon={Printer}
          onPress={() => {
            window.location.hash = partAddress({ what: 'part', id: entries.id, metal });
          }}
        >
          Print the drawing
        </Button>
      )}
    </div>
  );
}

const OfFamily = ({
  pattern,
  onLeave,
  error,
}: {
  pattern: string;
  onLeave: () => void;
  error: string | undefined;
}) => (
  <Group title="Profile">
    {error && <p className={styles.warning}>{error}</p>}
    <p className={styles.note}>
      A size of <a href={placeOf('shop', 'parts', pattern)}>{pattern}</a>: its name, shape and bend order are
      changed there.
    </p>
    <div className={styles.ends}>
      <Button small onPress={onLeave}>
        Remove it from the family
      </Button>
    </div>
  </Group>
);
