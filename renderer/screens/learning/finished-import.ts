import { makeFileImport } from '../orders/import/file-import.ts';

/** A file of finished operations on its way into the records. */
export const useFinishedImport = makeFileImport('finished');
