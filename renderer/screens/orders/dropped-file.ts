let waiting: File | null = null;
const listeners = new Set<() => void>();

/** A file dropped on the window, on its way to the import screen. */
export const droppedFile = {
  give(file: File): void {
    waiting = file;
    listeners.forEach((listener) => listener());
  },
  /** Hand the file over once; null when none waits. */
  take(): File | null {
    const file = waiting;
    waiting = null;
    return file;
  },
  /** Hear of the next file while the import screen is open. @returns a function that stops listening */
  onGiven(listener: () => void): () => void {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
};
