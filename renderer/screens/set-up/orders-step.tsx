import { FileUp, PencilRuler, Plus } from 'lucide-react';
import type { Shop } from '../../../core/shop/state.ts';
import { counted } from '../../../core/units/count.ts';
import { usePlanJob } from '../../shell/use-plan-job.ts';
import { navigate } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { RowsFromFile } from '../../form/pasted-rows.tsx';
import { openImport } from '../import/kinds.ts';
import { Group } from '../../form/form-frame.tsx';
import styles from './set-up.module.css';
import { StepFoot } from './step-foot.tsx';
import { useGoOn } from './steps.ts';

/** Parts and work orders from a file, or the first of each by hand; then the first plan. */
export function OrdersStep({ shop }: { shop: Shop }) {
  const goOn = useGoOn(shop);
  const { start } = usePlanJob();
  const planned = shop.line.length > 0 && shop.machine.length > 0;
  const finish = () => {
    goOn('orders');
    if (planned) start();
    navigate('board');
  };
  return (
    <>
      <div className={styles.body}>
        <Group
          title="Work orders"
          note="From a spreadsheet or any other program: save it as a file, or copy its rows and paste them on Orders."
        >
          <p>
            {shop.order.length === 0
              ? 'None yet.'
              : `${counted(shop.order.length, 'work order')} with ${counted(shop.line.length, 'line')}.`}
          </p>
          <p className={styles.offers}>
            <Button look={planned ? 'usual' : 'primary'} icon={FileUp} onPress={() => openImport('orders')}>
              Work orders from a file
            </Button>
            <Button icon={Plus} onPress={() => navigate('orders', '+')}>
              Type a work order
            </Button>
          </p>
        </Group>
        <Group
          title="Parts"
          note="What a line asks for: its cross-section says how wide the blank is and how it is bent."
        >
          <p>{shop.part.length === 0 ? 'None yet.' : `${counted(shop.part.length, 'part')}.`}</p>
          <p className={styles.offers}>
            <Button icon={PencilRuler} onPress={() => navigate('shop', 'parts', '+')}>
              Draw a part
            </Button>
            <RowsFromFile list="parts" label="Parts from a file" />
          </p>
        </Group>
      </div>
      <StepFoot step="orders" does={planned ? 'Plan the week' : null} onGoOn={finish} />
    </>
  );
}
