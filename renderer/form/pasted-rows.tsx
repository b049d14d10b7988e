import { FileUp } from 'lucide-react';
import { useEffect } from 'react';
import { importKinds } from '../../core/import/kinds.ts';
import { placeOf } from '../router.ts';
import { droppedFile } from '../screens/orders/dropped-file.ts';
import { Button } from '../ui/button.tsx';
import styles from './form.module.css';

/** A kind of file has the name of the list that it fills: 'orders', or the shop's 'parts', 'colours' … */
const isRead = (list: string): boolean => Object.hasOwn(importKinds, list);

/** Read rows of a list from elsewhere: a file that is there, or (null) one to be chosen. */
function readRows(list: string, file: File | null): void {
  if (file) droppedFile.give(file);
  window.location.hash = `${placeOf('orders', 'import')}?kind=${list}`;
}

/** Cells copied in a spreadsheet come as text with a tab between cells, a line a row. */
const isTable = (text: string): boolean => /\t/.test(text) || /\S\r?\n.*\S/.test(text);

/** While a list is shown, what is pasted outside a field is read as a file of its rows. */
export function usePastedRows(list: string): void {
  useEffect(() => {
    if (!isRead(list)) return;
    const paste = (event: ClipboardEvent) => {
      const inField =
        event.target instanceof Element && event.target.closest('input, textarea, [role=dialog]');
      const text = event.clipboardData?.getData('text/plain') ?? '';
      if (inField || !isTable(text)) return;
      event.preventDefault();
      readRows(list, new File([text], 'Pasted rows.txt', { type: 'text/plain' }));
    };
    document.addEventListener('paste', paste);
    return () => document.removeEventListener('paste', paste);
  }, [list]);
}

/** The way to a file of a list's rows; nothing where such files are not read. */
export const RowsFromFile = ({ list, label = 'From a file' }: { list: string; label?: string }) =>
  isRead(list) ? (
    <Button icon={FileUp} onPress={() => readRows(list, null)}>
      {label}
    </Button>
  ) : null;

/** The same beside a list, with the hint that rows can be pasted. */
export function RowsFromElsewhere({ list }: { list: string }) {
  if (!isRead(list)) return null;
  return (
    <>
      <RowsFromFile list={list} />
      <p className={styles.note}>Rows copied in a spreadsheet can be pasted here (Ctrl+V).</p>
    </>
  );
}
