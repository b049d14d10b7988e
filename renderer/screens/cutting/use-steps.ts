import type { SheetGroup } from '../../../core/cutting/plan.ts';
import { groupOfStack, newStack, stacksOf } from '../../../core/cutting/stacks.ts';
import { relisted } from '../../../core/cutting/renumber.ts';
import type { CutStep } from '../../../core/cutting/step.ts';
import { addSheets, changeStep, cutListOf, moveStep, sheetsFor } from '../../../core/edit/cutting-steps.ts';
import type { Sheet } from '../../../core/material/material.ts';
import type { RunCut } from '../../../core/planning/cut-run.ts';
import { stockFor } from '../../../core/planning/run-stock.ts';
import { sentence } from '../../../core/result.ts';
import { counted } from '../../../core/units/count.ts';
import type { CutList } from '../../../core/shop/stock.ts';
import { navigate } from '../../router.ts';
import { toastError } from '../../ui/toast.tsx';
import { useAct } from '../../form/use-act.ts';
import type { ReadyCuts } from '../../queries/cuts.ts';

/** What can be done to a run's list. Each is one step of the history. */
export interface StepEdit {
  move(from: number, to: number): void;
  remove(at: number): void;
  add(step: CutStep): void;
  change(at: number, step: CutStep): void;
  /** Sheets of a stock, laid ready for steps to be added. */
  addSheets(sheet: Sheet, count: number): void;
  /** The whole list in place of another run's. */
  copyListTo(runId: string): void;
  /** The list as it is to be, said in a label; on other sheets where they are given. */
  put(steps: readonly CutStep[], label: string, groups?: readonly SheetGroup[]): void;
  /** Put a step last in another run's list, fed from one of its stacks. */
  copyTo(step: CutStep, runId: string, stack: string): void;
  planAgain(): void;
}

/** The steps as they stand, planned or changed. */
export const stepsOf = ({ plan }: RunCut): readonly CutStep[] => (plan.ok ? plan.value.steps : []);

/** The sheets laid ready for a run, those of a changed list too that no step cuts at the moment. */
export const sheetsOf = ({ plan, changed }: RunCut): readonly SheetGroup[] =>
  changed?.groups ?? (plan.ok ? plan.value.groups : []);

/** Every stack that a step can be fed from: sheets, panels, strips, what is left. */
export const stacksIn = (cut: RunCut): string[] => stacksOf(sheetsOf(cut), stepsOf(cut));

/** The sheets that a stack is cut from. */
export const groupIn = (cut: RunCut, stack: string): string =>
  groupOfStack(sheetsOf(cut), stepsOf(cut), stack);

/** A stack that the list does not have yet, for pieces cut from one. */
export const newStackIn = (cut: RunCut, from: string): string => newStack(sheetsOf(cut), stepsOf(cut), from);

/** A run's list as it is on the screen, with these steps. */
export function listOf(cut: RunCut, groups: readonly SheetGroup[], steps: readonly CutStep[]): CutList {
  const { run, changed, input } = cut;
  const lines = run.operations.map((o) => o.line.id);
  const listed = relisted(steps, groups, input.lines);
  return cutListOf(changed?.id ?? run.id, lines, groups, listed, changed?.revision ?? 0);
}

export function useSteps({ shop, cuts }: ReadyCuts, cut: RunCut): StepEdit {
  const act = useAct();
  const save = (of: RunCut, steps: readonly CutStep[], label: string, groups = sheetsOf(of)): void =>
    void act({ do: 'cutting.save', list: listOf(of, groups, steps), label }).catch(toastError);
  return {
    move(from, to) {
      const steps = stepsOf(cut);
      if (to < 0 || to >= steps.length || to === from) return;
      save(
        cut,
        moveStep(steps, from, to),
        `Move step ${from + 1} of run ${cut.run.id} to position ${to + 1}`,
      );
    },
    remove: (at) =>
      save(
        cut,
        stepsOf(cut).filter((_, i) => i !== at),
        `Remove step ${at + 1} from run ${cut.run.id}`,
      ),
    add: (step) => save(cut, [...stepsOf(cut), step], `Add a step to run ${cut.run.id}`),
    change: (at, step) =>
      save(cut, changeStep(stepsOf(cut), at, step), `Change step ${at + 1} of run ${cut.run.id}`),
    addSheets: (sheet, count) =>
      save(
        cut,
        stepsOf(cut),
        `Add ${counted(count, 'sheet')} to run ${cut.run.id}`,
        addSheets(sheetsOf(cut), sheet, count),
      ),
    copyListTo(runId) {
      const other = cuts.find(({ run }) => run.id === runId);
      if (!other) return;
      const laid = sheetsFor(sheetsOf(cut), stockFor(shop, other.run), shop.settings);
      if (!laid.ok) return toastError(new Error(sentence(laid.issues)));
      save(other, stepsOf(cut), `Copy the list of run ${cut.run.id} to run ${runId}`, laid.value);
      navigate('cutting', runId);
    },
    copyTo(step, runId, stack) {
      const other = cuts.find(({ run }) => run.id === runId);
      if (!other) return;
      const copied = { ...step, group: groupIn(other, stack), stack, rest: null };
      save(
        other,
        [...stepsOf(other), copied],
        `Copy step ${step.number} of run ${cut.run.id} to run ${runId}`,
      );
      navigate('cutting', runId);
    },
    put: (steps, label, groups) => save(cut, steps, label, groups),
    planAgain() {
      if (cut.changed) void act({ do: 'cutting.remove', id: cut.changed.id }).catch(toastError);
    },
  };
}
