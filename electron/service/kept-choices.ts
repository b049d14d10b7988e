import { readFileSync } from 'node:fs';
import { join, parse } from 'node:path';
import { z } from 'zod';
import { writeWhole } from '../atomic-file.ts';

/** How this machine is used, which is no matter of the shop's: kept beside the data file, not in it. */
const choices = z.object({
  /** Whether all runs are worked on while the app is idle. */
  idleCutting: z.boolean(),
});
type Choices = Readonly<z.infer<typeof choices>>;

const USUAL: Choices = { idleCutting: true };

/** Where the choices for a data file lie. */
export function choicesBeside(file: string): string {
  const { dir, name } = parse(file);
  return join(dir, `${name}-choices.json`);
}

export const keptChoices = (dataFile: string) => {
  const file = choicesBeside(dataFile);
  return {
    /** What is usual where nothing was chosen, or what was cannot be read. */
    read(): Choices {
      try {
        return choices.parse(JSON.parse(readFileSync(file, 'utf8')));
      } catch {
        return USUAL;
      }
    },
    /** @throws Refused when it cannot be kept */
    write: (chosen: Choices): void => writeWhole(file, `${JSON.stringify(chosen)}\n`),
  };
};
