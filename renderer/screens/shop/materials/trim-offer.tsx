import { trimOffers } from '../../../../core/report/trim-offer.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { useAct } from '../../../form/use-act.ts';
import { Button } from '../../../ui/button.tsx';
import { toastError } from '../../../ui/toast.tsx';
import look from '../shop.module.css';

/** Where a shear was told another trim than its sheets have: both figures, and either with one press. */
export function TrimOffers({ shop }: { shop: Shop }) {
  const act = useAct();
  return trimOffers(shop).map(({ machineId, message, take, leave }) => (
    <div key={machineId} className={look.offer} role="status">
      <p>{message}</p>
      <div className={look.offerTools}>
        {[...(take ? [take] : []), leave].map(({ label, command }) => (
          <Button key={label} small onPress={() => void act(command).catch(toastError)}>
            {label}
          </Button>
        ))}
      </div>
    </div>
  ));
}
