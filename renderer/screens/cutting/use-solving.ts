import { useEffect, useRef, useState } from 'react';
import { contract } from '../../../core/contract/index.ts';
import { runKey } from '../../../core/cutting/run.ts';
import type { CutPlan } from '../../../core/cutting/plan.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { foundWords } from '../../../core/report/cutting-words.ts';
import type { MoneyStyle } from '../../../core/units/money.ts';
import { useCutAnswers } from '../../queries/cuts.ts';
import { invoke } from '../../queries/invoke.ts';
import { toastError } from '../../ui/toast.tsx';

/** Worked on by itself when a run is opened, and when someone asks for more. */
const USUAL_S = 5;
const MORE_S = 20;

interface Solving {
  readonly running: boolean;
  readonly seconds: number;
  /** What the work asked for by hand has found, or a sentence when it failed. */
  readonly message: string | null;
  /** Work on it for longer. */
  more(): void;
  stop(): void;
}

/** Has the host look for better sheets while a run is on the screen, unless they are proven or were changed by hand. */
export function useSolving(cut: RunCut, money: MoneyStyle): Solving {
  const { input, plan, changed } = cut;
  const key = runKey(input);
  const open = plan.ok && plan.value.status !== 'optimal' && changed === null;
  const state = useCutAnswers().data?.state ?? null;
  const own = state?.key === key ? state : null;
  const solve = (seconds: number, again: boolean) => invoke(contract.cutsSolve, { input, seconds, again });
  // Asked once for each input: a better answer is no reason to ask again.
  const asked = useRef('');
  // Asked for by hand, and the list that there was then: of other work nothing is said.
  const [search, setSearch] = useState<{ readonly jobId: string; readonly before: CutPlan } | null>(null);
  useEffect(() => {
    if (!open || asked.current === key) return;
    asked.current = key;
    void solve(USUAL_S, false).catch(toastError);
  });
  const running = own?.phase === 'running';
  return {
    running,
    seconds: own?.seconds ?? 0,
    message:
      own?.message ??
      (search && search.jobId === own?.jobId && plan.ok
        ? foundWords(search.before, plan.value, money, running)
        : null),
    more: () => {
      if (!plan.ok) return;
      const before = plan.value;
      void solve(MORE_S, true).then(({ jobId }) => setSearch({ jobId, before }), toastError);
    },
    stop: () => {
      if (own) void invoke(contract.cutsStop, { jobId: own.jobId }).catch(toastError);
    },
  };
}
