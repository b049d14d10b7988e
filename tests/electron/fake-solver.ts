import type { LaunchSolver } from '../../electron/solver/launch.ts';
import type { FromSolver, Start, ToSolver } from '../../electron/solver/messages.ts';

/** A process that only a test sees. */
export interface FakeProcess {
  /** What the host sent to it. */
  readonly heard: ToSolver[];
  readonly killed: () => boolean;
  send(message: FromSolver): void;
  exit(): void;
}

/** Processes that do what a test tells them. @param onStart how one answers its start, some time later */
export function fakeSolvers(onStart: (process: FakeProcess, start: Start) => void = () => undefined) {
  const processes: FakeProcess[] = [];
  const launch: LaunchSolver = () => {
    let listener: (message: FromSolver) => void = () => undefined;
    let exited: () => void = () => undefined;
    let killed = false;
    const process: FakeProcess = {
      heard: [],
      killed: () => killed,
      send: (message) => listener(message),
      exit: () => exited(),
    };
    processes.push(process);
    return {
      send(message) {
        process.heard.push(message);
        if (message.kind === 'start') setImmediate(() => onStart(process, message));
      },
      onMessage: (heard) => (listener = heard),
      onExit: (heard) => (exited = heard),
      kill: () => void (killed = true),
    };
  };
  return { launch, processes };
}
