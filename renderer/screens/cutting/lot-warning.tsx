import type { RunCut } from '../../../core/planning/cut-run.ts';
import { lotWarnings } from '../../../core/report/lot-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useAct } from '../../form/use-act.ts';
import { usePresent } from '../../queries/hooks.ts';
import { Button } from '../../ui/button.tsx';
import { toastError } from '../../ui/toast.tsx';
import styles from './cutting.module.css';

/** That no lot on hand has enough for the run's lines, and for each the press that lets it be cut from several. */
export function LotWarning({ shop, cut }: { shop: Shop; cut: RunCut }) {
  const act = useAct();
  const present = usePresent();
  const lines = cut.run.operations.map(({ line }) => line);
  const warnings = lotWarnings(cut.run);
  if (warnings.length === 0) return null;
  const mix = (id: string) => {
    const line = lines.find((one) => one.id === id);
    const order = shop.order.find((one) => one.id === line?.orderId);
    if (!line || !order) return;
    const changed = { ...line, mixLots: true };
    void act({ do: 'order.save', order, lines: [changed], removed: [], at: present() }).catch(toastError);
  };
  return (
    <div className={styles.faults} role="alert">
      {warnings.map((warning) => (
        <p key={warning}>{warning}</p>
      ))}
      <div className={styles.lotActs}>
        {lines.map(({ id }) => (
          <Button key={id} small onPress={() => mix(id)}>{`Let ${id} mix lots`}</Button>
        ))}
      </div>
    </div>
  );
}
