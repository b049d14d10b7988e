// @vitest-environment jsdom
import { join } from 'node:path';
import { cleanup, render, screen } from '@testing-library/react';
import { afterEach, expect, it } from 'vitest';
import { cutRuns } from '../../../core/planning/cut-run.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { shearRuns } from '../../../core/planning/runs.ts';
import { loadDemo } from '../../../demo-data/load.ts';
import { valueOf } from '../../../electron/refused.ts';
import { keptRows } from '../../../renderer/screens/cutting/run-list.tsx';
import { DataTable } from '../../../renderer/ui/data-table.tsx';
import { NOW } from '../../support/builders.ts';

afterEach(cleanup);

it('a run is drawn when its sheets are found, and again only when they change', () => {
  const shop = loadDemo(join(import.meta.dirname, '../../../demo-data/shop'), NOW);
  const view = valueOf(viewPlan(shop, NOW));
  const runs = shearRuns(shop, view);
  const first: ReturnType<typeof keptRows> = keptRows(runs);
  const cuts = cutRuns(shop, view);
  const [a, b] = [cuts.next().value!, cuts.next().value!];
  const bare = first([]);
  const some = first([a]);
  expect(some.map((row, at) => row === bare[at]).filter((same) => !same)).toHaveLength(1);
  // Looked at anew: other objects around the same sheets.
  expect(first([{ ...a }])).toEqual(some);
  expect(first([{ ...a }]).every((row, at) => row === some[at])).toBe(true);
  const more = first([{ ...a }, b]);
  expect(more.filter((row, at) => row !== some[at]).map(({ run }) => run.id)).toEqual([b.run.id]);
  // What is no longer there to cut from is news.
  const [taking] = a.takings;
  const short = { ...a, takings: [{ ...taking!, short: taking!.short + 1 }] };
  expect(first([short, b])[0]).not.toBe(more[0]);
});

it('a table draws only the rows that are others', () => {
  const drawn: string[] = [];
  const columns = [
    {
      id: 'name',
      label: 'Name',
      cell: ({ name }: { name: string }) => {
        drawn.push(name);
        return name;
      },
    },
  ];
  const table = (rows: readonly { name: string; sheets: number }[]) => (
    <DataTable label="Runs" columns={columns} rows={rows} rowId={({ name }) => name} />
  );
  const [a, b, c] = ['a', 'b', 'c'].map((name) => ({ name, sheets: 0 }));
  const { rerender } = render(table([a!, b!, c!]));
  expect(new Set(drawn)).toEqual(new Set(['a', 'b', 'c']));
  drawn.length = 0;
  rerender(table([a!, { ...b!, sheets: 1 }, c!]));
  expect(new Set(drawn)).toEqual(new Set(['b']));
  expect(screen.getAllByRole('row')).toHaveLength(4);
});
