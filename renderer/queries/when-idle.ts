/** So long it waits at most: a window in the background has no idle moments. */
const WAIT_MS = 1000;

/** Resolves when the window has drawn what it has to: for what nobody waits for at a start. */
export const whenIdle = (): Promise<void> =>
  new Promise((resolve) => {
    if ('requestIdleCallback' in window) window.requestIdleCallback(() => resolve(), { timeout: WAIT_MS });
    else setTimeout(resolve);
  });
