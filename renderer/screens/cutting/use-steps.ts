import { cutListOf, moveStep, relisted } from '../../../core/edit/cutting-steps.ts';
import type { CutStep } from '../../../core/cutting/step.ts';
import type { RunCut } from '../../../core/report/cutting.ts';
import { navigate } from '../../router.ts';
import { toastError } from '../../ui/toast.tsx';
import { useAct } from '../shop/form/use-act.ts';
import type { Ready } from './cutting-screen.tsx';

/** What can be done to a run's list. Each is one step of the history. */
export interface StepEdit {
  move(from: number, to: number): void;
  remove(at: number): void;
  add(step: CutStep): void;
  copyTo(step: CutStep, runId: string): void;
  planAnew(): void;
}

export function useSteps({ cuts }: Ready, cut: RunCut): StepEdit {
  const act = useAct();
  const stepsOf = (of: RunCut): readonly CutStep[] => (of.plan.ok ? of.plan.value.steps : []);
  const save = (of: RunCut, steps: readonly CutStep[], label: string): void => {
    if (!of.plan.ok) return;
    const { run, input, changed } = of;
    const list = cutListOf(
      changed?.id ?? run.id,
      run.operations.map((o) => o.line.id),
      of.plan.value.groups,
      relisted(steps, input.lines),
      changed?.revision ?? 0,
    );
    void act({ do: 'cutting.save', list, label }).catch(toastError);
  };
  return {
    move(from, to) {
      const steps = stepsOf(cut);
      if (to < 0 || to >= steps.length || to === from) return;
      save(cut, moveStep(steps, from, to), `Move step ${from + 1} of run ${cut.run.id} to place ${to + 1}`);
    },
    remove: (at) =>
      save(
        cut,
        stepsOf(cut).filter((_, i) => i !== at),
        `Take step ${at + 1} out of run ${cut.run.id}`,
      ),
    add: (step) => save(cut, [...stepsOf(cut), step], `Add a step to run ${cut.run.id}`),
    copyTo(step, runId) {
      const other = cuts.find(({ run }) => run.id === runId);
      if (!other?.plan.ok) return;
      const group = other.plan.value.groups[0]?.id ?? step.group;
      save(
        other,
        [...stepsOf(other), { ...step, group, stack: group }],
        `Copy step ${step.number} of run ${cut.run.id} to run ${runId}`,
      );
      navigate('cutting', runId);
    },
    planAnew() {
      if (cut.changed) void act({ do: 'cutting.remove', id: cut.changed.id }).catch(toastError);
    },
  };
}
