import { ArrowLeft, FileDown, Printer } from 'lucide-react';
import { useEffect } from 'react';
import { contract } from '../../../core/contract/index.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { useNow, useShop, useStatus } from '../../queries/hooks.ts';
import { invoke } from '../../queries/invoke.ts';
import { navigate, usePlace } from '../../router.ts';
import { Button } from '../../ui/button.tsx';
import { EmptyState, SentenceError, Waiting } from '../../ui/states.tsx';
import { toast, toastError, ToastCorner } from '../../ui/toast.tsx';
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
      {!shop && !error && <Waiting what="the part" />}
      {shop && <Sheet shop={shop} choice={choice} />}
      <div className={styles.screenOnly}>
        <ToastCorner />
      </div>
    </div>
  );
}

function Sheet({ shop, choice }: { shop: Shop; choice: PartChoice }) {
  const now = useNow();
  useEffect(() => {
    const root = document.documentElement;
    root.dataset.printReady = 'true';
    return () => {
      delete root.dataset.printReady;
    };
  }, []);
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
  const savePdf = () =>
    invoke(contract.printPdf, printableOf(choice)).then(({ path }) => {
      if (path !== null) toast({ text: `Saved as ${path}.` });
    }, toastError);
  const isPart = choice.what === 'part';
  return (
    <header className={styles.tools}>
      <Button
        icon={ArrowLeft}
        onPress={() => (isPart ? navigate('shop', 'parts', choice.id) : navigate('board'))}
      >
        {isPart ? 'Back to the part' : 'Back to the board'}
      </Button>
      {inBrowser ? (
        <Button look="primary" icon={Printer} onPress={() => window.print()}>
          Print
        </Button>
      ) : (
        <Button look="primary" icon={FileDown} onPress={() => void savePdf()}>
          Save PDF
        </Button>
      )}
    </header>
  );
}
