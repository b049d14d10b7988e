import { FileUp } from 'lucide-react';
import { useState, type DragEvent, type ReactNode } from 'react';
import { navigate } from '../router.ts';
import { droppedFile } from '../screens/orders/dropped-file.ts';
import { toast } from '../ui/toast.tsx';
import styles from './shell.module.css';

const holdsFile = (event: DragEvent) => event.dataTransfer.types.includes('Files');

/** The whole window takes a CSV file of work orders and hands it to the import screen. */
export function DropFile({ children }: { children: ReactNode }) {
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    if (!holdsFile(event)) return;
    event.preventDefault();
    setOver(false);
    const [file, more] = event.dataTransfer.files;
    if (!file) return;
    if (more) toast({ text: `One file at a time: only ${file.name} was read.`, look: 'trouble' });
    droppedFile.give(file);
    navigate('orders', 'import');
  };
  return (
    <div
      className={styles.window}
      onDragOver={(event) => {
        if (!holdsFile(event)) return;
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={(event) => {
        if (event.relatedTarget === null) setOver(false);
      }}
      onDrop={drop}
    >
      {children}
      {over && (
        <div className={styles.dropHint}>
          <FileUp size={32} aria-hidden />
          <p>Let go to import the work orders in this file</p>
        </div>
      )}
    </div>
  );
}
