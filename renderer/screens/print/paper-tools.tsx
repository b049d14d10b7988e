import { ArrowLeft, FileDown, Printer } from 'lucide-react';
import { useEffect, type ReactNode } from 'react';
import { contract } from '../../../core/contract/index.ts';
import type { Printable } from '../../../core/contract/print.ts';
import { invoke } from '../../queries/invoke.ts';
import { Button } from '../../ui/button.tsx';
import { toast, toastError } from '../../ui/toast.tsx';
import styles from './print.module.css';

/** Tells whoever makes the PDF that the page is drawn. */
export function usePrintReady(): void {
  useEffect(() => {
    const root = document.documentElement;
    root.dataset.printReady = 'true';
    return () => {
      delete root.dataset.printReady;
    };
  }, []);
}

/** Print, where a browser does that; else save a PDF. */
export function PrintButton({ what, inBrowser }: { what: Printable; inBrowser: boolean }) {
  const savePdf = () =>
    invoke(contract.printPdf, what).then(({ path }) => {
      if (path !== null) toast({ text: `Saved as ${path}.` });
    }, toastError);
  return inBrowser ? (
    <Button look="primary" icon={Printer} onPress={() => window.print()}>
      Print
    </Button>
  ) : (
    <Button look="primary" icon={FileDown} onPress={() => void savePdf()}>
      Save PDF
    </Button>
  );
}

interface Props {
  what: Printable;
  inBrowser: boolean;
  back: string;
  onBack: () => void;
  /** What is chosen of the page. */
  children?: ReactNode;
}

/** What stands above a page on the screen: the way back, and printing. */
export const PaperTools = ({ what, inBrowser, back, onBack, children }: Props) => (
  <header className={styles.tools}>
    <Button icon={ArrowLeft} onPress={onBack}>
      {back}
    </Button>
    {children}
    <PrintButton what={what} inBrowser={inBrowser} />
  </header>
);
