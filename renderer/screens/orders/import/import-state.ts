import { contract } from '../../../../core/contract/index.ts';
import { invoke } from '../../../queries/invoke.ts';
import { makeFileImport } from './file-import.ts';

/** A file of work orders on its way into the shop. */
export const useImport = makeFileImport({
  check: (file) => invoke(contract.importCheck, file),
  recheck: (file) => invoke(contract.importRecheck, file),
  take: (file) => invoke(contract.importTake, file),
});
