import { contract } from '../../../core/contract/index.ts';
import { invoke } from '../../queries/invoke.ts';
import { makeFileImport } from '../orders/import/file-import.ts';

/** A file of finished operations on its way into the records. */
export const useFinishedImport = makeFileImport({
  check: (file) => invoke(contract.importFinishedCheck, file),
  recheck: (file) => invoke(contract.importFinishedRecheck, file),
  take: (file) => invoke(contract.importFinishedTake, file),
});
