import highsLoader from 'highs';
import type { SolveMip } from '../../core/cutting/mip.ts';

export type Highs = Awaited<ReturnType<typeof highsLoader>>;

let loaded: Promise<Highs> | undefined;
/** HiGHS, loaded once a process: it blocks while it works, so only solver processes, benches and tests load it. */
export const loadHighs = (): Promise<Highs> => (loaded ??= highsLoader());

/** HiGHS as the function that core/cutting takes; `secondsLeft` keeps one call inside the whole budget. */
export function mipWith(highs: Highs, secondsLeft: () => number): SolveMip {
  return (lp, { seconds }) => {
    const solved = highs.solve(lp, {
      time_limit: Math.max(0.05, Math.min(seconds, secondsLeft())),
      output_flag: false,
    });
    if (solved.Status === 'Infeasible') return { status: 'infeasible', columns: null };
    const optimal = solved.Status === 'Optimal';
    // Stopped by the time limit it may still hold a solution; without one the objective is not a finite number.
    if (!optimal && !Number.isFinite(solved.ObjectiveValue)) return { status: 'stopped', columns: null };
    const columns = Object.entries(solved.Columns).map(
      ([name, column]) => [name, 'Primal' in column ? column.Primal : 0] as const,
    );
    return { status: optimal ? 'optimal' : 'stopped', columns: Object.fromEntries(columns) };
  };
}
