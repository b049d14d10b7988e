import { utilityProcess } from 'electron';
import type { LaunchSolver } from './solver/launch.ts';
import type { FromSolver } from './solver/messages.ts';

/** Solver processes the Electron way. @param file the built solver, dist/electron/solver.cjs */
export const utilitySolver =
  (file: string): LaunchSolver =>
  () => {
    const child = utilityProcess.fork(file, [], { serviceName: 'Foldweek planner', stdio: 'ignore' });
    return {
      send: (message) => child.postMessage(message),
      onMessage: (listener) => child.on('message', (message: FromSolver) => listener(message)),
      onExit: (listener) => child.once('exit', listener),
      kill: () => void child.kill(),
    };
  };
