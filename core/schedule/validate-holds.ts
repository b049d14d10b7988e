import { issue, type Issue } from '../result.ts';
import type { OperationInput } from './problem.ts';

/** Names of what an operation holds that say nothing, or say it twice in one list. */
export function holdsProblems(operation: OperationInput): Issue[] {
  const lists = [operation.holds ?? [], ...(operation.machines ?? []).map((m) => m.holds ?? [])];
  const wrong = lists.flatMap((names) => names.filter((name, k) => name === '' || names.indexOf(name) < k));
  return [...new Set(wrong)].map((name) =>
    issue(
      `operation ${operation.id}`,
      'holds',
      name === ''
        ? `Operation ${operation.id} holds something without a name.`
        : `Operation ${operation.id} holds ${name} twice, and there is one.`,
      'Name each thing that it holds once.',
    ),
  );
}
