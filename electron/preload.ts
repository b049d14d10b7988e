import { contextBridge, ipcRenderer, type IpcRendererEvent } from 'electron';

/** The whole bridge between a page and the host; the prefix keeps every other channel out of reach. */
contextBridge.exposeInMainWorld('bridge', {
  call: (name: string, input: unknown, caller: string): Promise<unknown> =>
    ipcRenderer.invoke(`call:${name}`, input, caller),
  /** @returns the function that stops listening */
  onPush(listener: (push: unknown) => void): () => void {
    const hear = (_event: IpcRendererEvent, push: unknown): void => listener(push);
    ipcRenderer.on('push', hear);
    return () => ipcRenderer.off('push', hear);
  },
});
