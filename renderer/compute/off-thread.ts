import type { Answered, Computation, Computations } from './computations.ts';

interface Waiting {
  readonly resolve: (value: never) => void;
  readonly reject: (error: Error) => void;
}

/** A worker with the questions that wait for it, by number. */
interface Hand {
  readonly worker: Worker;
  readonly waiting: Map<number, Waiting>;
}

/** So many at most: questions that need no answer of each other are then worked on side by side. */
const MOST = Math.max(2, Math.min(4, (globalThis.navigator?.hardwareConcurrency ?? 2) - 1));
const hands = new Set<Hand>();
let asked = 0;

function start(): Hand {
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  const waiting = new Map<number, Waiting>();
  const hand: Hand = { worker, waiting };
  worker.onmessage = ({ data: { number, value, trouble } }: MessageEvent<Answered>) => {
    const one = waiting.get(number);
    waiting.delete(number);
    if (trouble === undefined) one?.resolve(value as never);
    else one?.reject(new Error(trouble));
  };
  // The next question tries with a new one.
  worker.onerror = () => {
    hands.delete(hand);
    waiting.forEach(({ reject }) =>
      reject(new Error('This could not be worked out. Nothing was changed; open the window again.')),
    );
    worker.terminate();
  };
  hands.add(hand);
  return hand;
}

/** One that has nothing to do; else a new one, while there may be more; else the one with the fewest questions. */
function nextHand(): Hand {
  const [least] = [...hands].sort((a, b) => a.waiting.size - b.waiting.size);
  return least && (least.waiting.size === 0 || hands.size >= MOST) ? least : start();
}

/** Compute something away from the window's thread, which goes on drawing. */
export function offThread<R extends Computation>(
  what: R,
  ...input: Parameters<Computations[R]>
): Promise<ReturnType<Computations[R]>> {
  const { worker, waiting } = nextHand();
  const number = ++asked;
  return new Promise((resolve, reject) => {
    waiting.set(number, { resolve, reject });
    worker.postMessage({ number, what, input });
  });
}
