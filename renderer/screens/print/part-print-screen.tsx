import type { Shop } from '../../../core/shop/state.ts';
import { useNow, useShop, useStatus } from '../../queries/hooks.ts';
import { navigate, usePlace } from '../../router.ts';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { ToastCorner } from '../../ui/toast.tsx';
import { PaperTools, usePrintReady } from './paper-tools.tsx';
import { partOnPaper, printableOf, readPartChoice, type PartChoice } from './part-choice.ts';
import { PartPaper } from './part-paper.tsx';
import styles from './print.module.css';

/** A part's drawing, or the traveller of a line, as it comes out on paper. */
export function PartPrintScreen() {
  const choice = readPartChoice(usePlace());
  const { data: shop, error } = useShop();
  const inBrowser = useStatus().data?.host === 'browser';
  return (
    <div className={`${styles.desk} ${inBrowser ? styles.numbered : ''}`}>
      <Tools choice={choice} inBrowser={inBrowser} />
      {error && <SentenceError message={error.message} />}
      {!shop && !error && <Waiting doing="Reading the part" />}
      {shop && <Sheet shop={shop} choice={choice} />}
      <ToastCorner />
    </div>
  );
}

function Sheet({ shop, choice }: { shop: Shop; choice: PartChoice }) {
  const now = useNow();
  usePrintReady();
  const drawn = partOnPaper(shop, choice);
  if (!drawn)
    return (
      <EmptyState
        title={`There is no ${choice.what === 'part' ? 'part' : 'line'} ${choice.id}, or its metal is gone.`}
      />
    );
  return <PartPaper shop={shop} now={now} {...drawn} />;
}

function Tools({ choice, inBrowser }: { choice: PartChoice; inBrowser: boolean }) {
  const isPart = choice.what === 'part';
  return (
    <PaperTools
      what={printableOf(choice)}
      inBrowser={inBrowser}
      back={isPart ? 'Back to the part' : 'Back to the board'}
      onBack={() => (isPart ? navigate('shop', 'parts', choice.id) : navigate('board'))}
    />
  );
}
