// @vitest-environment jsdom
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import type { SearchState } from '../../../core/contract/search.ts';
import { standsLast } from '../../../renderer/queries/history.ts';
import { SearchStrip } from '../../../renderer/shell/search-strip.tsx';
import { plainMoney } from '../../support/writing.ts';

afterEach(cleanup);

const ended = (stepId: number | null): SearchState => ({
  jobId: 'r1',
  phase: 'finished',
  seconds: 5,
  budgetSeconds: 5,
  step: 1,
  evaluations: 10,
  objective: 3,
  startObjective: 3,
  gist: { lateLines: 1, lateSeconds: 60, changeoverSeconds: 0 },
  startGist: { lateLines: 1, lateSeconds: 60, changeoverSeconds: 0 },
  bound: null,
  curve: [],
  stepId,
  joins: null,
  protect: null,
  message: null,
});

/** The strip after a search whose plan became a step, in a shop with this history of steps. */
function stripOf(stepId: number | null, undo: readonly number[], redo: readonly number[] = []) {
  const nothing = () => undefined;
  const entries = (ids: readonly number[]) => ids.map((id) => ({ id, label: 'Add work order 1001', at: 0 }));
  render(
    <SearchStrip
      money={plainMoney}
      job={{ state: ended(stepId), running: false, start: nothing, stop: nothing }}
      undoRedo={{
        undoLabel: 'Add work order 1001',
        undoStepId: undo[0] ?? null,
        standsLast: (step) => standsLast({ undo: entries(undo), redo: entries(redo) }, step),
        redoLabel: null,
        canUndo: true,
        canRedo: false,
        undo: nothing,
        redo: nothing,
      }}
    />,
  );
  const shown = screen.queryByRole('region', { name: 'Search' }) !== null;
  const offersUndo = screen.queryByRole('button', { name: 'Undo' }) !== null;
  cleanup();
  return { shown, offersUndo };
}

it('a plan that was found can be undone from the strip', () => {
  expect(stripOf(7, [7, 6])).toEqual({ shown: true, offersUndo: true });
});

it('the strip says nothing more of a plan that was undone, or changed afterwards', () => {
  expect(stripOf(7, [6], [7]).shown).toBe(false);
  expect(stripOf(7, [], [6, 7]).shown).toBe(false);
  expect(stripOf(7, [8, 7]).shown).toBe(false);
});

it('it stays while the screen has not read yet that the plan was stored, without an undo for another step', () => {
  expect(stripOf(7, [6])).toEqual({ shown: true, offersUndo: false });
});

it('a search that found nothing offers no undo: it would take back another step', () => {
  expect(stripOf(null, [7])).toEqual({ shown: true, offersUndo: false });
  expect(stripOf(null, [])).toEqual({ shown: true, offersUndo: false });
});
