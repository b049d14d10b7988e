import { runKey, type RunInput } from './run.ts';

/** Values by key: of more than `most` the one put longest ago is forgotten. */
export class Remembered<Value> {
  readonly #values = new Map<string, Value>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  get(key: string): Value | undefined {
    return this.#values.get(key);
  }

  put(key: string, value: Value): void {
    this.#values.delete(key);
    this.#values.set(key, value);
    const [oldest] = this.#values.keys();
    if (this.#values.size > this.#most && oldest !== undefined) this.#values.delete(oldest);
  }

  /** The one put longest ago first. */
  entries(): [key: string, value: Value][] {
    return [...this.#values];
  }
}

/** The same answers, each run worked on once: by what is asked (`runKey`), not by who asks. */
export function rememberRuns<Answer extends object>(
  answer: (input: RunInput) => Answer,
  most = Infinity,
): (input: RunInput) => Answer {
  const known = new Remembered<Answer>(most);
  return (input) => {
    const key = runKey(input);
    const before = known.get(key);
    if (before) return before;
    const made = answer(input);
    known.put(key, made);
    return made;
  };
}
