import { join } from 'node:path';
import { measureHost } from './history.ts';
import { makeYears } from './years.ts';

/** One half of the bench of years: make a data file, or measure a host on it. Arguments: which, its folder, lines. */
const [, , what, dataDir = '', lines = '0'] = process.argv;
if (what === 'make') makeYears(join(dataDir, 'foldweek.db'), Number(lines));
else process.stdout.write(JSON.stringify(await measureHost(dataDir)));
