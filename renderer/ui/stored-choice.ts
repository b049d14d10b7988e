import { useSyncExternalStore } from 'react';

/** One of a few values, kept in this browser or window only (never in the shop's file). */
interface StoredChoice<T extends string> {
  readonly choices: readonly T[];
  read(): T;
  write(choice: T): void;
  use(): T;
}

export function storedChoice<T extends string>(
  storedAs: string,
  choices: readonly T[],
  usual: T,
): StoredChoice<T> {
  const listeners = new Set<() => void>();
  const read = () => choices.find((choice) => choice === localStorage.getItem(storedAs)) ?? usual;
  const subscribe = (listener: () => void) => {
    listeners.add(listener);
    return () => listeners.delete(listener);
  };
  return {
    choices,
    read,
    write(choice) {
      localStorage.setItem(storedAs, choice);
      listeners.forEach((listener) => listener());
    },
    use: () => useSyncExternalStore(subscribe, read),
  };
}
