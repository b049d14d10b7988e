import { FileUp } from 'lucide-react';
import { useState, type DragEvent, type ReactNode } from 'react';
import { readPlace } from '../router.ts';
import { importOf } from '../screens/import/file-import.ts';
import { KIND_WORDS, kindAt, openImport } from '../screens/import/kinds.ts';
import { toast } from '../ui/toast.tsx';
import styles from './shell.module.css';

const holdsFile = (event: DragEvent) => event.dataTransfer.types.includes('Files');

/** What a file that is dropped now is read as: what the screen shows, work orders on most. */
const kindHere = () => kindAt(readPlace(window.location.hash));

/** The whole window takes a file of rows and hands it to the import screen. */
export function DropFile({ children }: { children: ReactNode }) {
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    if (!holdsFile(event)) return;
    event.preventDefault();
    setOver(false);
    const [file, more] = event.dataTransfer.files;
    if (!file) return;
    if (more) toast({ text: `One file at a time: only ${file.name} was read.`, look: 'trouble' });
    void importOf(kindHere()).getState().read(file);
    openImport(kindHere());
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
          <p>{`Let go to read the ${KIND_WORDS[kindHere()].many} in this file`}</p>
        </div>
      )}
    </div>
  );
}
