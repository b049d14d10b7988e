import type { OperationInput, ProblemInput, Track } from './problem.ts';
import { canDo } from './validate-fixed.ts';

/**
 * The machines as they are numbered. One that takes any number of operations at once stands there once for each operation
 * that may go to it: work that never waits for other work is work with a machine of its own. So decoder, search and bounds
 * know of nothing but machines that do one thing at a time; names tell nothing of it, since all of them bear the machine's.
 */
export const tracksOf = (input: ProblemInput, operations: readonly OperationInput[]): Track[] =>
  input.machines.flatMap((machine): Track[] =>
    machine.unlimited
      ? operations.flatMap((operation, only) =>
          canDo(input, operation, machine.id) ? [{ machine, only }] : [],
        )
      : [{ machine, only: null }],
  );
