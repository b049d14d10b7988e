import type { Shop } from '../../../core/shop/state.ts';
import { RowsFromFile } from '../../form/pasted-rows.tsx';
import { useAct } from '../../form/use-act.ts';
import { placeOf } from '../../router.ts';
import { EmptyState } from '../../ui/states.tsx';
import { toastError } from '../../ui/toast.tsx';
import { counted } from '../../../core/units/count.ts';
import { SheetGrid } from '../shop/materials/sheet-grid.tsx';
import { useSheetTicks } from '../shop/materials/sheet-ticks.ts';
import styles from './set-up.module.css';
import { StepFoot } from './step-foot.tsx';
import { useGoOn } from './steps.ts';

/** Which sizes are kept of which metals, ticked in a grid. */
export function SheetsStep({ shop }: { shop: Shop }) {
  const goOn = useGoOn(shop);
  const act = useAct();
  const ticks = useSheetTicks(shop);
  const { rows } = ticks;
  const keep = async () => {
    if (rows.length > 0)
      await act({ do: 'rows.save', rows, label: `Add ${counted(rows.length, 'sheet size')}` });
    ticks.drop();
    goOn('sheets');
  };
  return (
    <>
      <div className={styles.body}>
        {ticks.metals.length === 0 ? (
          <EmptyState title="No metals to keep sheets of">
            <p>
              Tick metals, gauges and colours first, in{' '}
              <a href={placeOf('shop', 'set-up', 'metals')}>the step before</a>.
            </p>
          </EmptyState>
        ) : (
          <>
            <p>
              Blanks are cut from the sizes you keep. What lies in stock and what a sheet costs is put in
              later.
            </p>
            <SheetGrid shop={shop} ticks={ticks} />
            <p className={styles.offers}>
              <RowsFromFile list="sheets" label="Sheet sizes from a file" />
            </p>
          </>
        )}
      </div>
      <StepFoot
        step="sheets"
        does={rows.length > 0 ? `Add ${counted(rows.length, 'sheet size')}` : null}
        onGoOn={() => void keep().catch(toastError)}
        onSkip={rows.length > 0 ? () => goOn('sheets') : undefined}
      />
    </>
  );
}
