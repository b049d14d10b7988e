import type { FromSolver, ToSolver } from './messages.ts';

/** The solver's end of the line to the host, whichever way its process was started. */
interface Port {
  send(message: FromSolver): void;
  listen(listener: (message: ToSolver) => void): void;
}

/** What Electron's utility processes have instead of process.send. */
interface ParentPort {
  postMessage(message: unknown): void;
  on(event: 'message', listener: (event: { data: unknown }) => void): void;
}

/** @throws Error when this process was not started by a host */
export function hostPort(): Port {
  const { parentPort } = process as { parentPort?: ParentPort };
  if (parentPort)
    return {
      send: (message) => parentPort.postMessage(message),
      listen: (listener) => parentPort.on('message', ({ data }) => listener(data as ToSolver)),
    };
  if (!process.send) throw new Error('the solver runs only as a process of the app');
  return {
    send: (message) => process.send?.(message),
    listen: (listener) => process.on('message', (message) => listener(message as ToSolver)),
  };
}
