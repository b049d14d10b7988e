import { SET_UP_STEPS, type SetUpStep } from '../../../core/report/missing.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useCommand } from '../../queries/hooks.ts';
import { navigate } from '../../router.ts';
import { toastError } from '../../ui/toast.tsx';

export const stepName: Readonly<Record<SetUpStep, string>> = {
  shop: 'Shop and units',
  machines: 'Machines',
  metals: 'Metals and colours',
  sheets: 'Sheet sizes',
  orders: 'First orders',
};

export const isStep = (word: string | undefined): word is SetUpStep =>
  SET_UP_STEPS.some((step) => step === word);

/** Where the set-up goes on: the first step that was neither done nor skipped. */
export const nextStep = ({ settings }: Shop): SetUpStep =>
  SET_UP_STEPS.find((step) => !settings.setUpDone.includes(step)) ?? 'orders';

export const goToStep = (step: SetUpStep): void => navigate('shop', 'set-up', step);

/** Leave a step behind, done or skipped, and go to the one after it; kept with the shop. */
export function useGoOn(shop: Shop): (step: SetUpStep) => void {
  const command = useCommand();
  return (step) => {
    const { settings } = shop;
    const next = SET_UP_STEPS[SET_UP_STEPS.indexOf(step) + 1];
    if (next) goToStep(next);
    if (settings.setUpDone.includes(step)) return;
    const row = { ...settings, setUpDone: [...settings.setUpDone, step] };
    command.mutate({ do: 'settings.save', row }, { onError: toastError });
  };
}
