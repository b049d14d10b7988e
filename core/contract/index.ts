import { appBegin, appStatus, recordsRead, shopRead } from './app.ts';
import { archiveCustomers, archiveOrder, archiveSearch } from './archive.ts';
import { askPromise, askRead, askRepair, askRush, askStop, askWhy } from './ask.ts';
import {
  asidePutBack,
  asideRead,
  asideRemove,
  backupsMake,
  backupsPreview,
  backupsRead,
  backupsRestore,
  exportWrite,
} from './backup.ts';
import { cutsImprove, cutsRead, cutsSolve, cutsStop } from './cuts.ts';
import { editApply, editHistory, editRedo, editTakeBack, editUndo } from './edit.ts';
import { importRead, importTake } from './import.ts';
import {
  historyRead,
  plansCompare,
  plansGoBack,
  plansKeep,
  plansList,
  plansPublished,
  plansRead,
} from './plans.ts';
import { printPdf } from './print.ts';
import { searchRead, searchStart, searchStop } from './search.ts';

/** The one list of everything a screen can ask of a host. A new request is added here and answered in electron/host/answers.ts. */
export const contract = {
  appStatus,
  appBegin,
  shopRead,
  recordsRead,
  archiveSearch,
  archiveOrder,
  archiveCustomers,
  editApply,
  editUndo,
  editRedo,
  editTakeBack,
  editHistory,
  importRead,
  importTake,
  searchStart,
  searchStop,
  searchRead,
  askWhy,
  askRush,
  askRepair,
  askPromise,
  askStop,
  askRead,
  cutsSolve,
  cutsStop,
  cutsRead,
  cutsImprove,
  plansList,
  plansRead,
  plansPublished,
  plansKeep,
  plansGoBack,
  plansCompare,
  historyRead,
  printPdf,
  backupsRead,
  backupsMake,
  backupsPreview,
  backupsRestore,
  asidePutBack,
  asideRead,
  asideRemove,
  exportWrite,
} as const;
export type Contract = typeof contract;
export type CallName = keyof Contract;
