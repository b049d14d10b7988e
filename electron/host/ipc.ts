import { ipcMain } from 'electron';
import { isOurPage } from '../security.ts';
import { refuse, requestNames, type Serve } from './serve.ts';

/** Answer the contract over Electron's IPC, to our own pages only. */
export function serveIpc(serve: Serve): void {
  for (const name of requestNames)
    ipcMain.handle(`call:${name}`, (event, input: unknown, caller: unknown) =>
      isOurPage(event.senderFrame)
        ? serve(name, input, caller)
        : refuse('forbidden', 'Requests from other pages are refused.'),
    );
}
