import { makeFileImport } from './file-import.ts';

/** A file of work orders on its way into the shop. */
export const useImport = makeFileImport('orders');
