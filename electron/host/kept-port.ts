import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { writeWhole } from '../atomic-file.ts';

/**
 * The port that was used last on a data folder. A browser keeps what belongs to an address (drafts, whose steps are whose)
 * for that very port.
 */
export const keptPort = (dataFolder: string) => {
  const file = join(dataFolder, 'browser-port');
  return {
    /** 0: any. */
    read(): number {
      try {
        const port = Number(readFileSync(file, 'utf8'));
        return Number.isInteger(port) && port > 0 && port <= 65_535 ? port : 0;
      } catch {
        return 0;
      }
    },
    /** A folder that cannot be written costs the next start its old address, nothing more. */
    write(port: number): void {
      try {
        writeWhole(file, String(port));
      } catch {
        return;
      }
    },
  };
};
