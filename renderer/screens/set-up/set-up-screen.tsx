import { Check } from 'lucide-react';
import { SET_UP_STEPS, type SetUpStep } from '../../../core/report/missing.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useShop } from '../../queries/hooks.ts';
import { useMissing } from '../../queries/missing.ts';
import { placeOf, usePlace } from '../../router.ts';
import { Page } from '../../ui/page.tsx';
import { SentenceError, Waiting } from '../../ui/states.tsx';
import { MachinesStep } from './machines-step.tsx';
import { MetalsStep } from './metals-step.tsx';
import { MissingList } from './missing-list.tsx';
import { OrdersStep } from './orders-step.tsx';
import styles from './set-up.module.css';
import { SheetsStep } from './sheets-step.tsx';
import { ShopStep } from './shop-step.tsx';
import { isStep, nextStep, stepName } from './steps.ts';

/** From an empty shop to its first plan in five steps; each can be left, and is where it was left when one comes back. */
export function SetUpScreen() {
  const { data: shop, error } = useShop();
  return (
    <Page
      title="Set-up"
      lead="Five steps to your first plan. Leave out what you like; all of it can be changed later."
    >
      {error && <SentenceError message={error.message} />}
      {!shop && !error && <Waiting doing="Reading the shop" />}
      {shop && <Steps shop={shop} />}
    </Page>
  );
}

const view: Readonly<Record<SetUpStep, (props: { shop: Shop }) => React.ReactNode>> = {
  shop: ShopStep,
  machines: MachinesStep,
  metals: MetalsStep,
  sheets: SheetsStep,
  orders: OrdersStep,
};

function Steps({ shop }: { shop: Shop }) {
  const word = usePlace().path[2];
  const step = isStep(word) ? word : nextStep(shop);
  const missing = useMissing(shop);
  const Step = view[step];
  return (
    <>
      <nav aria-label="Steps" className={styles.steps}>
        <ol>
          {SET_UP_STEPS.map((one, i) => (
            <li key={one}>
              <a href={placeOf('shop', 'set-up', one)} aria-current={one === step ? 'step' : undefined}>
                <span className={styles.number}>
                  {shop.settings.setUpDone.includes(one) ? <Check size={14} aria-label="Done:" /> : i + 1}
                </span>
                {stepName[one]}
              </a>
            </li>
          ))}
        </ol>
      </nav>
      <div className={styles.columns}>
        <section className={styles.step} aria-label={stepName[step]} key={step}>
          <Step shop={shop} />
        </section>
        <aside className={styles.missing} aria-label="Missing">
          <h2>Still missing to plan</h2>
          {missing.length === 0 ? (
            <p className={styles.nothing}>✓ Nothing: every open line can be planned.</p>
          ) : (
            <MissingList
              missing={missing}
              hrefOf={(one) => (one.step === step ? null : placeOf('shop', 'set-up', one.step))}
            />
          )}
        </aside>
      </div>
    </>
  );
}
