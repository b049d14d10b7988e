import type { ErrorCode } from '../core/contract/call.ts';
import { sentence, type Result } from '../core/result.ts';

/** A trouble the user can understand and fix: its message is a whole sentence for the screen. Anything else thrown is a bug. */
export class Refused extends Error {
  readonly code: ErrorCode;

  constructor(code: ErrorCode, message: string) {
    super(message);
    this.name = 'Refused';
    this.code = code;
  }
}

/** The value of a result. @throws Refused with the problems as sentences */
export function valueOf<T>(result: Result<T>): T {
  if (!result.ok) throw new Refused('refused', sentence(result.issues));
  return result.value;
}
