import { X, Zap } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { latenessOf } from '../../../core/planning/lateness.ts';
import { lateOffers, offerSentence, rushOffers, type RushOffer } from '../../../core/report/rush-offer.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useShop } from '../../queries/hooks.ts';
import { usePlan } from '../../queries/plan.ts';
import { Button } from '../../ui/button.tsx';
import { IconButton } from '../../ui/icon-button.tsx';
import { openLines } from './rush-facts.ts';
import { askRush, useWhatIf } from './what-if-view.ts';
import styles from './what-if.module.css';

/**
 * After a change that may have made lines urgent where they stand, the question of a rush is offered, for as long as they
 * are late and nobody has answered. What is reported at a machine while this window shows it is told when it is left.
 */
export function RushOfferStrip({ onFloor }: { onFloor: boolean }) {
  const { data: shop } = useShop();
  const seen = useRef<Shop | null>(null);
  const [offers, setOffers] = useState<readonly RushOffer[]>([]);
  useEffect(() => {
    if (!shop || (onFloor && seen.current !== null)) return;
    const found = seen.current ? rushOffers(seen.current, shop) : [];
    seen.current = shop;
    if (found.length > 0)
      setOffers((old) => [
        ...old.filter(({ lineId }) => !found.some((offer) => offer.lineId === lineId)),
        ...found,
      ]);
  }, [shop, onFloor]);
  if (offers.length === 0 || onFloor) return null;
  return <Offered offers={offers} onAnswered={() => setOffers([])} />;
}

function Offered({ offers, onAnswered }: { offers: readonly RushOffer[]; onAnswered: () => void }) {
  const query = usePlan();
  const asked = useWhatIf((view) => view.asked);
  if (query.is !== 'ready' || asked?.about === 'rush') return null;
  const { shop, plan } = query;
  const open = new Set(openLines(shop));
  const late = lateOffers(
    offers.filter(({ lineId }) => open.has(lineId)),
    latenessOf(shop, plan.schedule),
  );
  if (late.length === 0) return null;
  const ask = () => {
    onAnswered();
    askRush(late.map(({ lineId }) => lineId));
  };
  return (
    <section className={styles.offer} aria-label="Sooner?">
      <p role="status">{offerSentence(late, shop.settings.timeZone)}</p>
      <Button small look="primary" icon={Zap} onPress={ask}>
        Can it be sooner?
      </Button>
      <IconButton small label="Leave it where it is" icon={X} onPress={onAnswered} />
    </section>
  );
}
