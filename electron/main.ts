import { dirname, join } from 'node:path';
import { parseArgs } from 'node:util';
import { app, BrowserWindow, dialog } from 'electron';
import { dataFile, dataFolder } from './data-file.ts';
import { openStore, type Store } from './db/open.ts';
import { makeAnswers } from './host/answers.ts';
import { serveIpc } from './host/ipc.ts';
import { makeServe, readAhead } from './host/serve.ts';
import { fileLog, type Log } from './log.ts';
import { setMenu } from './menu.ts';
import { openWithDialog } from './open-data.ts';
import { pdfPrinter } from './print-pdf.ts';
import { registerScheme, servePages } from './protocol.ts';
import { Refused } from './refused.ts';
import { isOurPage, lockDown } from './security.ts';
import { Backups } from './service/backups.ts';
import { fileStamp, makeClock, type Clock } from './service/clock.ts';
import { makePushes, type Pushes } from './service/pushes.ts';
import { utilitySolver } from './utility-solver.ts';
import { openWindow } from './window.ts';

const appFolder = app.getAppPath();
const built = (name: string): string => join(appFolder, 'dist', 'electron', name);

// A data folder of its own is an app of its own: its window, its lock, its cache.
if (process.env.FOLDWEEK_DATA_DIR) app.setPath('userData', dataFolder(process.env));
registerScheme();
if (app.requestSingleInstanceLock()) void app.whenReady().then(start);
else app.quit();

function start(): void {
  try {
    run();
  } catch (error) {
    dialog.showErrorBox(
      'Foldweek',
      error instanceof Refused ? error.message : `Foldweek could not start. ${String(error)}`,
    );
    app.exit(1);
  }
}

function run(): void {
  const log = fileLog(join(app.getPath('userData'), 'foldweek.log'));
  process.on('uncaughtException', (error) => log.error('a bug in the host', error));
  const clock = makeClock(process.env.FOLDWEEK_NOW);
  const opened = openWithDialog(
    fileFrom(process.argv),
    (file) => open(file, clock, log),
    fileStamp(clock.now()),
  );
  if (!opened) return app.exit(0);
  const { store, notice } = opened;
  const pushes = makePushes(log);
  const preload = built('preload.cjs');
  lockDown();
  servePages(join(appFolder, 'dist', 'renderer'));
  const backups = new Backups({ store, clock, pushes, log });
  const answers = makeAnswers({
    kind: 'desktop',
    version: app.getVersion(),
    appFolder,
    store,
    clock,
    pushes,
    log,
    backups,
    launchSolver: utilitySolver(built('solver.cjs')),
    notice,
    printPdf: pdfPrinter(store, preload, () => window),
  });
  const serve = makeServe(answers, log, () => store.kept);
  serveIpc(serve);
  setMenu(pushes);
  pushToPages(pushes, log);
  const window = openWindow(dirname(store.file), preload);
  readAhead(serve);
  const stopBackups = backups.watch();
  window.once('closed', () => void stopBackups().finally(() => app.quit()));
  app.on('second-instance', (_event, argv) => comeForward(window, store.file, fileFrom(argv)));
  app.once('will-quit', () => store.close());
}

/** The data file that a command line asks for. */
function fileFrom(argv: readonly string[]): string {
  const { values } = parseArgs({
    args: argv.slice(1),
    options: { data: { type: 'string' } },
    strict: false,
    allowPositionals: true,
  });
  return dataFile(process.env, typeof values.data === 'string' ? values.data : undefined);
}

const open = (file: string, clock: Clock, log: Log): Store =>
  openStore(file, { migrations: join(appFolder, 'migrations'), stamp: fileStamp(clock.now()), log });

/** A window that goes away just then, such as one that a PDF is drawn in, keeps no other from hearing. */
function pushToPages(pushes: Pushes, log: Log): void {
  pushes.listen((push) => {
    for (const { webContents } of BrowserWindow.getAllWindows())
      try {
        if (isOurPage(webContents.mainFrame)) webContents.send('push', push);
      } catch (error) {
        log.info(`a window was gone before “${push.kind}” reached it: ${String(error)}`);
      }
  });
}

/** Foldweek was started again: show the window that is open, and say so when another file was meant. */
function comeForward(window: BrowserWindow, file: string, asked: string): void {
  if (window.isMinimized()) window.restore();
  window.focus();
  if (asked === file) return;
  void dialog.showMessageBox(window, {
    message: 'Foldweek is open with another data file.',
    detail: `This window works in ${file}. Close it first, then open ${asked}.`,
  });
}
