import { basename, join, parse } from 'node:path';
import { dialog } from 'electron';
import { newestUsable, takePlace } from './db/backup.ts';
import type { Store } from './db/open.ts';
import { Refused } from './refused.ts';

interface OpenedData {
  readonly store: Store;
  /** What to tell the user once the window is open. */
  readonly notice: string | null;
}

/** One thing to do about a file that cannot be used. */
interface Way {
  readonly label: string;
  /** @returns null when the user chose to leave after all */
  go(): OpenedData | null;
}

/**
 * Open the data file, or say why it cannot be used and what can be done. A damaged file stays as it is, beside a backup
 * that takes its place or another file that is worked in; one that is only out of reach is tried again, and never gets an
 * empty one in its place.
 * @param open throws Refused on a file that cannot be used @param stamp names a damaged file that is set aside
 * @returns null when the user chose to leave
 */
export function openWithDialog(
  file: string,
  open: (file: string) => Store,
  stamp: string,
): OpenedData | null {
  try {
    return { store: open(file), notice: null };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const ways =
      error.code === 'damaged' ? waysAround(file, error, open, stamp) : [tryAgain(file, open, stamp)];
    const choice = dialog.showMessageBoxSync({
      type: 'warning',
      title: 'Foldweek',
      message:
        error.code === 'damaged' ? 'The data file is damaged.' : 'The data file cannot be opened just now.',
      detail: error.message,
      buttons: ['Quit', ...ways.map(({ label }) => label)],
      defaultId: 0,
      cancelId: 0,
    });
    return ways[choice - 1]?.go() ?? null;
  }
}

const tryAgain = (file: string, open: (file: string) => Store, stamp: string): Way => ({
  label: 'Try again',
  go: () => openWithDialog(file, open, stamp),
});

function waysAround(file: string, error: Refused, open: (file: string) => Store, stamp: string): Way[] {
  const backup = newestUsable(file);
  const other = otherBeside(file);
  const made = backup && new Date(backup.at * 1000).toLocaleString();
  const fromBackup: Way[] = backup
    ? [
        {
          label: `Open the backup of ${made}`,
          go() {
            const kept = takePlace(file, backup.name, stamp);
            const opened = openWithDialog(file, open, stamp);
            const notice = `The data file was damaged; it is kept as ${kept}. You are working in the backup of ${made}: what was entered after it has to be entered again.`;
            return opened && { store: opened.store, notice };
          },
        },
      ]
    : [];
  return [
    ...fromBackup,
    {
      label: `Work in ${basename(other)} instead`,
      go() {
        const opened = openWithDialog(other, open, stamp);
        const notice = `${error.message} You are working in ${opened?.store.file}.`;
        return opened && { store: opened.store, notice };
      },
    },
  ];
}

/** foldweek.db → foldweek-2.db; the same the next time, so that the next start leads to the same work. */
function otherBeside(file: string): string {
  const { dir, name, ext } = parse(file);
  return join(dir, `${name}-2${ext}`);
}
