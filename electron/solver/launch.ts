import { fork } from 'node:child_process';
import type { FromSolver, ToSolver } from './messages.ts';

/** The host's end of the line to one solver process. */
export interface Solver {
  send(message: ToSolver): void;
  onMessage(listener: (message: FromSolver) => void): void;
  /** Called once, when the process is gone for whatever reason. */
  onExit(listener: () => void): void;
  kill(): void;
}

/** Starts one solver process. Electron has its own way (electron/utility-solver.ts). */
export type LaunchSolver = () => Solver;

/** For hosts that are plain Node. @param file the solver's entry, e.g. electron/solver/solver.ts */
export const nodeSolver =
  (file: string): LaunchSolver =>
  () => {
    const child = fork(file, { stdio: ['ignore', 'ignore', 'inherit', 'ipc'], serialization: 'advanced' });
    return {
      // A send to a process that just died fails; onExit tells of it.
      send: (message) => child.connected && child.send(message, () => undefined),
      onMessage: (listener) => child.on('message', (message) => listener(message as FromSolver)),
      onExit: (listener) => child.once('exit', listener),
      kill: () => child.kill(),
    };
  };
