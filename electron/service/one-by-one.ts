/** Work that is taken up one piece after the other. */
export function oneByOne() {
  let last: Promise<unknown> = Promise.resolve();
  return {
    /** Begins when what came before has ended, however it did. */
    take<T>(work: () => Promise<T>): Promise<T> {
      const mine = last.then(work, work);
      last = mine.catch(() => undefined);
      return mine;
    },
    /** All that was given until now. */
    done: (): Promise<unknown> => last,
  };
}
