// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import type { SearchState } from '../../../core/contract/search.ts';
import { RunStrip } from '../../../renderer/shell/run-strip.tsx';

afterEach(cleanup);

const ended = (stepId: number | null): SearchState => ({
  jobId: 'r1',
  phase: 'finished',
  seconds: 5,
  budgetSeconds: 5,
  step: 1,
  evaluations: 10,
  objective: 3,
  terms: null,
  startObjective: 3,
  bound: null,
  curve: [],
  stepId,
  joins: null,
  protect: null,
  message: null,
});

/** The strip after a run, when the newest step of the history has this number. */
function offersUndo(stepId: number | null, newest: number | null): boolean {
  const nothing = () => undefined;
  render(
    <RunStrip
      run={{ state: ended(stepId), running: false, start: nothing, stop: nothing }}
      undoRedo={{
        undoLabel: 'Add work order 1001',
        undoStepId: newest,
        redoLabel: null,
        undo: nothing,
        redo: nothing,
      }}
    />,
  );
  const offered = screen.queryByRole('button', { name: 'Undo' }) !== null;
  cleanup();
  return offered;
}

it('a plan that was found can be undone from the strip until something else is done', () => {
  expect(offersUndo(7, 7)).toBe(true);
  expect(offersUndo(7, 8)).toBe(false);
});

it('a run that found nothing offers no undo: it would take back another step', () => {
  expect(offersUndo(null, 7)).toBe(false);
  expect(offersUndo(null, null)).toBe(false);
});
