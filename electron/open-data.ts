import { existsSync } from 'node:fs';
import { parse, join } from 'node:path';
import { dialog } from 'electron';
import type { Store } from './db/open.ts';
import { Refused } from './refused.ts';

export interface OpenedData {
  readonly store: Store;
  /** What to tell the user once the window is open. */
  readonly notice: string | null;
}

/**
 * Open the data file, or say why it cannot be used and let the user choose; the file stays as it is either way.
 * @param open throws Refused on a file that cannot be used
 * @returns null when the user chose to leave
 */
export function openWithDialog(file: string, open: (file: string) => Store): OpenedData | null {
  try {
    return { store: open(file), notice: null };
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const fresh = freshBeside(file);
    const buttons = error.code === 'damaged' ? ['Quit', 'Work in a new data file'] : ['Quit'];
    const choice = dialog.showMessageBoxSync({
      type: 'warning',
      title: 'Foldweek',
      message: 'The data file cannot be used.',
      detail: `${error.message}${buttons.length > 1 ? `\n\nA new data file would be ${fresh}; the old one stays where it is.` : ''}`,
      buttons,
      defaultId: 0,
      cancelId: 0,
    });
    if (choice !== 1) return null;
    return { store: open(fresh), notice: `${error.message} You are working in a new data file, ${fresh}.` };
  }
}

/** The first free name: foldweek-2.db, foldweek-3.db … */
function freshBeside(file: string): string {
  const { dir, name, ext } = parse(file);
  for (let n = 2; ; n++) {
    const fresh = join(dir, `${name}-${n}${ext}`);
    if (!existsSync(fresh)) return fresh;
  }
}
