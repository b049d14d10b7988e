import type { Answered, Computation, Computations } from './computations.ts';

interface Waiting {
  readonly resolve: (value: never) => void;
  readonly reject: (error: Error) => void;
}

const waiting = new Map<number, Waiting>();
let worker: Worker | null = null;
let asked = 0;

function start(): Worker {
  const started = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  started.onmessage = ({ data: { number, value, trouble } }: MessageEvent<Answered>) => {
    const one = waiting.get(number);
    waiting.delete(number);
    if (trouble === undefined) one?.resolve(value as never);
    else one?.reject(new Error(trouble));
  };
  // Without its worker a window shows everything but chances; the next question tries again.
  started.onerror = () => {
    waiting.forEach(({ reject }) =>
      reject(new Error('What finished work shows could not be computed. Open the window again.')),
    );
    waiting.clear();
    started.terminate();
    worker = null;
  };
  return started;
}

/** Compute something away from the window's thread, which goes on drawing. */
export function offThread<R extends Computation>(
  what: R,
  ...input: Parameters<Computations[R]>
): Promise<ReturnType<Computations[R]>> {
  worker ??= start();
  const number = ++asked;
  worker.postMessage({ number, what, input });
  return new Promise((resolve, reject) => waiting.set(number, { resolve, reject }));
}
