import { FileUp } from 'lucide-react';
import { useEffect } from 'react';
import type { ImportKindName } from '../../core/import/kinds.ts';
import { importOf, useFileImport } from '../screens/import/file-import.ts';
import { isRead, openImport } from '../screens/import/kinds.ts';
import { Button } from '../ui/button.tsx';
import styles from './form.module.css';

/** Cells copied in a spreadsheet come as text with a tab between cells, a line a row. */
const isTable = (text: string): boolean => /\t/.test(text) || /\S\r?\n.*\S/.test(text);

/** Pasted rows as a file, to be read like any other. */
export const pastedFile = (text: string): File => new File([text], 'Pasted rows.txt', { type: 'text/plain' });

/** While a list is shown, what is pasted outside a field is read as a file of its rows. @param list as in the address */
export function usePastedRows(list: string): void {
  useEffect(() => {
    if (!isRead(list)) return;
    const paste = (event: ClipboardEvent) => {
      const inField =
        event.target instanceof Element && event.target.closest('input, textarea, [role=dialog]');
      const text = event.clipboardData?.getData('text/plain') ?? '';
      if (inField || !isTable(text)) return;
      event.preventDefault();
      void importOf(list).getState().read(pastedFile(text));
      openImport(list);
    };
    document.addEventListener('paste', paste);
    return () => document.removeEventListener('paste', paste);
  }, [list]);
}

/** The way to a file of a list's rows; nothing where such files are not read. */
export const RowsFromFile = ({ list, label = 'From a file' }: { list: string; label?: string }) =>
  isRead(list) ? (
    <Button icon={FileUp} onPress={() => openImport(list)}>
      {label}
    </Button>
  ) : null;

/** The same beside a list, with the hint that rows can be pasted. */
export const RowsFromElsewhere = ({ list }: { list: string }) =>
  isRead(list) ? (
    <>
      <RowsFromFile list={list} />
      <p className={styles.note}>Rows copied in a spreadsheet can be pasted here (Ctrl+V).</p>
    </>
  ) : null;

/** The way back to a file of work orders that waits until the shop knows what it names. */
export function WaitingFile({ kind = 'orders' }: { kind?: ImportKindName }) {
  const { reading } = useFileImport(kind);
  if (!reading || reading.counts.waiting === 0) return null;
  return (
    <Button icon={FileUp} onPress={() => openImport(kind)}>
      {`Back to ${reading.fileName}`}
    </Button>
  );
}
