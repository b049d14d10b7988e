import type { Push } from '../../core/contract/push.ts';
import type { Log } from '../log.ts';

/** How news gets from the services to whichever host is listening. */
export interface Pushes {
  /** Tell every listener. It never throws: what is told has happened, whether or not a screen can hear it. */
  send(push: Push): void;
  /** @returns the function that stops listening */
  listen(listener: (push: Push) => void): () => void;
}

export function makePushes(log: Log): Pushes {
  const listeners = new Set<(push: Push) => void>();
  return {
    send(push) {
      for (const listener of listeners)
        try {
          listener(push);
        } catch (error) {
          log.error(`a screen could not be told “${push.kind}”`, error);
        }
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
