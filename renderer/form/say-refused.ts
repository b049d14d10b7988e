import { AppError } from '../queries/invoke.ts';
import { toast } from '../ui/toast.tsx';

/**
 * A refused change of the plan as a toast. Where someone else changed the queues first, it offers what to do on what
 * stands now.
 */
export function sayRefused(error: Error, again: { readonly label: string; readonly act: () => void }): void {
  const isStale = error instanceof AppError && error.conflicts.some(({ kind }) => kind === 'queue');
  toast({ text: error.message, look: 'trouble', ...(isStale ? { action: again } : {}) });
}
