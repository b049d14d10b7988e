import type { ErrorCode } from '../core/contract/call.ts';
import { sentence, type Conflict, type Result } from '../core/result.ts';

/** A trouble the user can understand and fix: its message is a whole sentence for the screen. Anything else thrown is a bug. */
export class Refused extends Error {
  readonly code: ErrorCode;
  /** Rows that someone else changed first, each in both versions. */
  readonly conflicts: readonly Conflict[];

  constructor(code: ErrorCode, message: string, conflicts: readonly Conflict[] = []) {
    super(message);
    this.name = 'Refused';
    this.code = code;
    this.conflicts = conflicts;
  }
}

/** The value of a result. @throws Refused with the problems as sentences */
export function valueOf<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  const conflicts = result.issues.flatMap(({ conflict }) => conflict ?? []);
  throw new Refused(conflicts.length > 0 ? 'conflict' : 'refused', sentence(result.issues), conflicts);
}
