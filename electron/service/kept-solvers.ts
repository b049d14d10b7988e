import type { LaunchSolver, Solver } from '../solver/launch.ts';
import type { FromSolver } from '../solver/messages.ts';

/** A process, and who listens to it at present. */
interface Kept {
  readonly solver: Solver;
  hear: (message: FromSolver) => void;
  gone: () => void;
  /** Ends it, while it has no job. */
  idle: NodeJS.Timeout | undefined;
}

const nobody = (): void => undefined;

/**
 * Solver processes that wait for the next job when they are done with one, for a start takes longer than a short job. One
 * that is ended in the middle of its work, or that failed, is not used again.
 * @param keptMs how long one is kept idle
 */
export function keptSolvers(launch: LaunchSolver, keptMs: number): { launch: LaunchSolver; close(): void } {
  const all = new Set<Kept>();
  const start = (): Kept => {
    const kept: Kept = { solver: launch(), hear: nobody, gone: nobody, idle: undefined };
    all.add(kept);
    kept.solver.onMessage((message) => kept.hear(message));
    kept.solver.onExit(() => {
      clearTimeout(kept.idle);
      all.delete(kept);
      kept.gone();
    });
    return kept;
  };
  const end = (kept: Kept): void => {
    clearTimeout(kept.idle);
    kept.idle = undefined;
    kept.hear = nobody;
    kept.gone = nobody;
    kept.solver.kill();
  };
  return {
    launch() {
      const kept = [...all].find(({ idle }) => idle !== undefined) ?? start();
      clearTimeout(kept.idle);
      kept.idle = undefined;
      let working = true;
      let given = true;
      return {
        send: (message) => kept.solver.send(message),
        onExit: (listener) => void (kept.gone = listener),
        onMessage: (listener) =>
          void (kept.hear = (message) => {
            if (message.kind === 'done' || message.kind === 'refused') working = false;
            listener(message);
          }),
        kill() {
          if (!given) return;
          given = false;
          if (working) end(kept);
          else kept.idle = setTimeout(() => end(kept), keptMs).unref();
        },
      };
    },
    /** Ends them all; a job at work is heard of no more. */
    close: () => all.forEach(end),
  };
}
