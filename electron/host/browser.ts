import { join } from 'node:path';
import { dataFile, dataFolder } from '../data-file.ts';
import { openStore } from '../db/open.ts';
import { fileLog } from '../log.ts';
import { Backups } from '../service/backups.ts';
import { fileStamp, makeClock } from '../service/clock.ts';
import { makePushes } from '../service/pushes.ts';
import { nodeSolver } from '../solver/launch.ts';
import { makeAnswers } from './answers.ts';
import { startHttp, type HttpHost } from './http.ts';
import { keptPort } from './kept-port.ts';
import { makeServe, readAhead } from './serve.ts';

export interface BrowserOptions {
  readonly appFolder: string;
  readonly version: string;
  readonly env: NodeJS.ProcessEnv;
  /** What --data said. */
  readonly data?: string;
  readonly port: number;
  /** The program that a solver process runs. */
  readonly solver: string;
}

/** The whole app behind a loopback address. @throws Refused when the data file cannot be used */
export async function startBrowserHost(options: BrowserOptions): Promise<HttpHost> {
  const { appFolder, env } = options;
  const log = fileLog(join(dataFolder(env), 'foldweek.log'));
  const clock = makeClock(env.FOLDWEEK_NOW);
  const store = openStore(dataFile(env, options.data), {
    migrations: join(appFolder, 'migrations'),
    stamp: fileStamp(clock.now()),
    log,
  });
  const pushes = makePushes(log);
  const backups = new Backups({ store, clock, pushes, log });
  const answers = makeAnswers({
    kind: 'browser',
    version: options.version,
    appFolder,
    store,
    clock,
    pushes,
    log,
    backups,
    launchSolver: nodeSolver(options.solver),
    notice: null,
    printPdf: null,
  });
  const pages = join(appFolder, 'dist', 'renderer');
  const serve = makeServe(answers, log, () => store.kept);
  const http = await startWhereItWas(options, (port) => startHttp({ port, pages, serve, pushes, log }));
  readAhead(serve);
  const stopBackups = backups.watch();
  return {
    address: http.address,
    async close() {
      await http.close();
      await stopBackups();
      store.close();
    },
  };
}

/** On the port that was asked for; else on the one used last, for the data folder's own file; else on any. */
async function startWhereItWas(
  { port, data, env }: BrowserOptions,
  startAt: (port: number) => Promise<HttpHost>,
): Promise<HttpHost> {
  if (port !== 0 || data !== undefined) return startAt(port);
  const kept = keptPort(dataFolder(env));
  const before = kept.read();
  const host = await startAt(before).catch((error: unknown) => {
    // Another program is there now, or may be: a port that is not free is no trouble where none was asked for.
    if (before === 0) throw error;
    return startAt(0);
  });
  kept.write(Number(new URL(host.address).port));
  return host;
}
