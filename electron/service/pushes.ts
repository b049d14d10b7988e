import type { Push } from '../../core/contract/push.ts';

/** How news gets from the services to whichever host is listening. */
export interface Pushes {
  send(push: Push): void;
  /** @returns the function that stops listening */
  listen(listener: (push: Push) => void): () => void;
}

export function makePushes(): Pushes {
  const listeners = new Set<(push: Push) => void>();
  return {
    send: (push) => listeners.forEach((listener) => listener(push)),
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
