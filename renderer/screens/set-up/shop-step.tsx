import { settings as settingsSchema, type Settings } from '../../../core/shop/settings.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useForm } from '../../form/use-form.ts';
import { SentenceError } from '../../ui/states.tsx';
import { ShopFields } from '../settings/shop-fields.tsx';
import styles from './set-up.module.css';
import { StepFoot } from './step-foot.tsx';
import { goToStep, useGoOn } from './steps.ts';

/** Name, clock, units and currency, as the system has them until someone corrects them. */
export function ShopStep({ shop }: { shop: Shop }) {
  const goOn = useGoOn(shop);
  const form = useForm<Settings>({
    name: 'settings',
    shop,
    current: shop.settings,
    schema: settingsSchema,
    command: (row) => ({
      do: 'settings.save',
      row: { ...row, setUpDone: [...new Set([...row.setUpDone, 'shop'])] },
    }),
    fieldOf: ({ field }) => (field === 'time zone' ? 'timeZone' : ''),
  });
  const saveAndGoOn = async () => {
    if (!form.changed) goOn('shop');
    else if (await form.save()) goToStep('machines');
  };
  return (
    <>
      <div className={styles.body}>
        {form.errors[''] && <SentenceError message={form.errors['']} />}
        <p>Taken from this computer; correct what differs in your shop.</p>
        <ShopFields form={form} />
      </div>
      <StepFoot step="shop" does={form.changed ? 'Save' : null} onGoOn={() => void saveAndGoOn()} />
    </>
  );
}
