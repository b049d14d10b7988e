import type { Printable } from '../../core/contract/print.ts';
import type { Store } from '../db/open.ts';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import { archiveService } from '../service/archive.ts';
import { asideService } from '../service/aside.ts';
import { askService } from '../service/ask.ts';
import type { Backups } from '../service/backups.ts';
import { beginService } from '../service/begin.ts';
import type { Clock } from '../service/clock.ts';
import { cutsService } from '../service/cuts.ts';
import { editService } from '../service/edit.ts';
import { exportAll } from '../service/export.ts';
import { fileImport } from '../service/file-import.ts';
import type { Pushes } from '../service/pushes.ts';
import { QuestionWorker } from '../service/question-worker.ts';
import { searchService } from '../service/search.ts';
import { plansService } from '../service/plans.ts';
import { LivingShop } from '../service/living-shop.ts';
import { recordsService } from '../service/shop.ts';
import type { LaunchSolver } from '../solver/launch.ts';
import type { Answers } from './serve.ts';

/** What a host brings along; everything else is the same for all hosts. */
export interface Host {
  readonly kind: 'desktop' | 'browser';
  readonly version: string;
  /** The folder that holds migrations/ and demo-data/. */
  readonly appFolder: string;
  readonly store: Store;
  readonly clock: Clock;
  readonly pushes: Pushes;
  readonly log: Log;
  readonly backups: Backups;
  readonly launchSolver: LaunchSolver;
  /** A sentence to show once after the start. */
  readonly notice: string | null;
  /** Makes a PDF and says where it went; null where the host cannot. */
  readonly printPdf: ((what: Printable) => Promise<string | null>) | null;
}

/** The contract's requests, each handed to the service that does it. */
export function makeAnswers(host: Host): Answers {
  const { store, clock, pushes, log, backups } = host;
  const living = new LivingShop(store, clock, pushes);
  store.onReplaced(() => living.reload());
  const begin = beginService(living, clock, host.appFolder);
  const edit = editService(living, clock);
  const launch = host.launchSolver;
  const questions = new QuestionWorker(launch, log);
  const search = searchService({ living, clock, pushes, edit, launch, questions, log });
  return {
    appStatus: () => ({
      host: host.kind,
      version: host.version,
      dataFile: store.file,
      fresh: begin.fresh(),
      now: clock.now(),
      fixedClock: clock.fixed,
      notice: noticeOf(host, living, begin.fresh()),
    }),
    appBegin(input) {
      if (input.with === 'demo') begin.demo();
      else if (input.with === 'empty') begin.empty(input);
      else begin.export(input.fileName, Buffer.from(input.gzipBase64, 'base64'));
      return {};
    },
    shopRead: () => living.read(),
    ...closedWork(recordsService(store), archiveService(store, clock)),
    editApply: ({ command }, caller) => ({
      ...edit.apply(command, caller),
      epoch: living.epoch,
      revision: living.revision,
    }),
    editUndo: ({ stepId }, caller) => ({ label: edit.undo(caller, stepId) }),
    editRedo: ({ stepId }, caller) => ({ label: edit.redo(caller, stepId) }),
    editTakeBack: ({ factId, reason }, caller) => ({ label: edit.takeBack(factId, caller, reason) }),
    editHistory: (_input, caller) => edit.history(caller),
    ...importAnswers(fileImport(living, clock, edit), backups),
    searchStart: ({ seconds, seed, protect }, caller) => search.start(seconds, seed, protect, caller),
    searchStop({ jobId }) {
      search.stop(jobId);
      return {};
    },
    searchRead: () => search.read(),
    ...planAnswers(plansService(living, clock, edit), living),
    ...askAnswers(askService({ living, clock, pushes, launch, questions, log })),
    ...cutAnswers(cutsService({ living, clock, pushes, launch, log })),
    ...backupAnswers(backups),
    ...asideAnswers(asideService(living)),
    exportWrite: () => exportAll(store, clock, host.version),
    async printPdf(what) {
      if (!host.printPdf)
        throw new Refused(
          'unavailable',
          'A browser cannot save a PDF by itself. Print the page and choose “Save as PDF” there.',
        );
      return { path: await host.printPdf(what) };
    },
  };
}

/** What is over: read, never changed. */
const closedWork = (records: ReturnType<typeof recordsService>, archive: ReturnType<typeof archiveService>) =>
  ({
    recordsRead: ({ before, limit }) => records.finished(before, limit),
    archiveSearch: ({ text, before, limit }) => archive.search(text, before, limit),
    archiveOrder: ({ orderId }) => archive.order(orderId),
    archiveCustomers: () => ({ names: archive.customers() }),
  }) satisfies Partial<Answers>;

/** A backup is made before what a file holds is taken. */
const importAnswers = (files: ReturnType<typeof fileImport>, backups: Backups) =>
  ({
    importRead: ({ base64, ...file }) => files.read({ ...file, bytes: Buffer.from(base64, 'base64') }),
    async importTake({ base64, ...file }, caller) {
      await backups.before('before-import');
      return files.take({ ...file, bytes: Buffer.from(base64, 'base64') }, caller);
    },
  }) satisfies Partial<Answers>;

/** What there is to tell that nobody asked for; null: nothing. The shop is read for it: only then it shows what cannot be. */
function noticeOf({ notice, store, backups }: Host, living: LivingShop, fresh: boolean): string | null {
  if (!fresh) living.read();
  const aside = store.run('count what was set aside', ({ rows }) => rows.aside.count());
  const rows =
    aside === 0
      ? null
      : `${aside === 1 ? 'One row' : `${aside} rows`} of the data file could not be read, or belonged to one that could not. ${aside === 1 ? 'It was' : 'They were'} set aside and the rest was opened; Settings list what was set aside.`;
  return [notice, rows, ...backups.troubles()].filter((text) => text !== null).join(' ') || null;
}

const backupAnswers = (backups: Backups) =>
  ({
    backupsRead: () => backups.read(),
    backupsMake: async () => ({ name: await backups.make() }),
    backupsPreview: ({ name }) => backups.preview(name),
    backupsRestore: ({ name }) => backups.restore(name),
  }) satisfies Partial<Answers>;

const asideAnswers = (aside: ReturnType<typeof asideService>) =>
  ({
    asideRead: () => aside.list(),
    asidePutBack({ id }) {
      aside.putBack(id);
      return {};
    },
    asideRemove({ id }) {
      aside.remove(id);
      return {};
    },
  }) satisfies Partial<Answers>;

const planAnswers = (plans: ReturnType<typeof plansService>, living: LivingShop) =>
  ({
    plansList: ({ before, limit }) => plans.list(before, limit),
    plansRead: ({ id }) => plans.read(id),
    plansPublished: () => plans.published(),
    plansKeep: ({ name }, caller) => ({ id: plans.keep(name, caller) }),
    plansGoBack: ({ id, seen }, caller) => ({
      ...plans.goBack(id, seen, caller),
      epoch: living.epoch,
      revision: living.revision,
    }),
    plansCompare: ({ a, b }) => plans.compare(a, b),
    historyRead: ({ before, limit }) => plans.history(before, limit),
  }) satisfies Partial<Answers>;

const askAnswers = (ask: ReturnType<typeof askService>) =>
  ({
    askWhy: ({ lineId }) => ask.why(lineId),
    askRush: ({ lineIds, intoFrozen, ...search }) => ask.rush(lineIds, intoFrozen, search),
    askRepair: ({ outage, most, ...search }) => ask.repair(outage, most, search),
    askPromise: ({ order, lines, jobId }) => ask.promise(order, lines, jobId),
    askStop({ jobId }) {
      ask.stop(jobId);
      return {};
    },
    askRead: ({ jobId }) => ask.read(jobId),
  }) satisfies Partial<Answers>;

const cutAnswers = (cuts: ReturnType<typeof cutsService>) =>
  ({
    cutsSolve: ({ input, seconds, again }) => cuts.solve(input, seconds, again),
    cutsStop({ jobId }) {
      cuts.stop(jobId);
      return {};
    },
    cutsRead: () => cuts.read(),
    cutsImprove({ on }) {
      cuts.improve(on);
      return {};
    },
  }) satisfies Partial<Answers>;
