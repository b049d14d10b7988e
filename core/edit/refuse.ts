import { err, issue, type Result } from '../result.ts';
import { operationName } from './plan-commands.ts';

/** Refuse something about an operation. */
export const refuse = (id: string, field: string, message: string, advice: string): Result<never> =>
  err(issue(operationName(id), field, message, advice));
