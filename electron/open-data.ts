import { basename, join, parse } from 'node:path';
import { dialog } from 'electron';
import type { Store } from './db/open.ts';
import { Refused } from './refused.ts';

interface OpenedData {
  readonly store: Store;
  /** What to tell the user once the window is open. */
  readonly notice: string | null;
}

/**
 * Open the data file, or say why it cannot be used and offer another one beside it; the file itself stays as it is. The
 * other one keeps its name, so that the next start leads to the same work.
 * @param open throws Refused on a file that cannot be used
 * @returns null when the user chose to leave
 */
export function openWithDialog(file: string, open: (file: string) => Store): OpenedData | null {
  try {
    return { store: open(file), notice: null };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const other = otherBeside(file);
    const choice = dialog.showMessageBoxSync({
      type: 'warning',
      title: 'Foldweek',
      message: 'The data file cannot be used.',
      detail: error.message,
      buttons: error.code === 'damaged' ? ['Quit', `Work in ${basename(other)} instead`] : ['Quit'],
      defaultId: 0,
      cancelId: 0,
    });
    if (choice !== 1) return null;
    const opened = openWithDialog(other, open);
    return (
      opened && { store: opened.store, notice: `${error.message} You are working in ${opened.store.file}.` }
    );
  }
}

/** foldweek.db → foldweek-2.db */
function otherBeside(file: string): string {
  const { dir, name, ext } = parse(file);
  return join(dir, `${name}-2${ext}`);
}
