import { describe, expect, it } from 'vitest';
import type { SearchState } from '../../../core/contract/search.ts';
import { viewQueues } from '../../../core/planning/plan-view.ts';
import { withBlocks } from '../../../core/edit/blocks.ts';
import { consequenceOf, consequenceWords, moveWords } from '../../../renderer/screens/board/consequence.ts';
import { curvePath } from '../../../renderer/shell/convergence-curve.tsx';
import { searchSentence } from '../../../renderer/shell/search-strip.tsx';
import { aLine, anOrder, aQueue, at } from '../../support/builders.ts';
import { aBoardShop, planOf } from '../gantt/a-board.ts';
import { money, plainMoney } from '../../support/writing.ts';

describe('what a move brings', () => {
  it('names the lines it makes late, and the changeover it costs', () => {
    const shop = aBoardShop({
      order: [anOrder({ due: at('2026-11-27') })],
      line: [1, 2, 3].map((number) =>
        aLine({ number, partId: 'flat-strip', colourId: number === 3 ? 'bone' : 'moss' }),
      ),
      queue: [aQueue({ id: 'S1', operations: ['1042/1:shear', '1042/2:shear', '1042/3:shear'] })],
    });
    const before = planOf(shop);
    const after = viewQueues(
      shop,
      before,
      withBlocks(before.queues, [{ operations: ['1042/3:shear'], machineId: 'S1', position: 1 }]),
    );
    if (!after.ok) throw new Error('the move cannot be decoded');
    const brought = consequenceOf(shop, before, after.value);
    // Moss, bone, moss instead of moss, moss, bone: one more change of colour at the shear, 240 s. Line 2 waits for
    // line 3 and both changes.
    const wait = before.operations.get('1042/3:shear')!.machines[0]!.seconds + 2 * 240;
    expect(brought.changeover).toBe(240);
    expect(brought.later.map((row) => [row.lineId, row.after - row.before])).toEqual([['1042/2', wait]]);
    expect(consequenceWords(brought)).toMatch(/^Makes 1042\/2 later by .*\. Changeover \+4 min\.$/);
  });

  it('is said in plain words', () => {
    const later = [
      { lineId: '1043/1', before: 0, after: 7200 },
      { lineId: '1044/1', before: 3600, after: 5400 },
      { lineId: '1045/1', before: 0, after: 60 },
    ];
    expect(consequenceWords({ later, saved: [], lateness: 9060, changeover: 0 })).toBe(
      'Makes 1043/1 late by 2 h, 1044/1 later by 30 min and 1 more line later. Lateness +2 h 31 min in all.',
    );
    expect(
      consequenceWords({ later: later.slice(0, 1), saved: ['1050/2'], lateness: -3600, changeover: -900 }),
    ).toBe('Makes 1043/1 late by 2 h. 1050/2 in time again. Lateness −1 h in all. Changeover −15 min.');
    expect(consequenceWords({ later: [], saved: [], lateness: 0, changeover: 0 })).toBe(
      'Nothing becomes late.',
    );
    const names = (id: string) => (id === 'B1' ? 'Brake' : 'Shear');
    const bending = { operations: ['1042/2:brake'], machineId: 'B1', position: 2 };
    expect(moveWords([bending], names)).toBe('1042/2 bending to position 3 on Brake.');
    const shearing = { operations: ['1042/1:shear', '1042/2:shear'], machineId: 'S1', position: 0 };
    expect(moveWords([shearing], names)).toBe('2 operations to position 1 on Shear.');
    expect(moveWords([shearing, bending], names)).toBe('3 operations on Shear and Brake.');
  });

  it('is nothing when the plan stays as it is', () => {
    const shop = aBoardShop({ line: [aLine()] });
    const plan = planOf(shop);
    expect(consequenceOf(shop, plan, plan)).toEqual({ later: [], saved: [], lateness: 0, changeover: 0 });
  });
});

describe('the search in a sentence', () => {
  const state: SearchState = {
    jobId: 'r1',
    phase: 'finished',
    seconds: 20,
    budgetSeconds: 20,
    step: 9,
    evaluations: 100,
    objective: 750,
    startObjective: 1000,
    gist: { lateLines: 34, lateSeconds: 7_084_800, changeoverSeconds: 43_200 },
    startGist: { lateLines: 41, lateSeconds: 7_570_800, changeoverSeconds: 86_400 },
    bound: null,
    curve: [],
    stepId: null,
    joins: null,
    protect: null,
    message: null,
  };

  const gain = '7 fewer late lines, 135 h less late, 12 h less changeover';

  it('says what the plan gained', () => {
    expect(searchSentence(state, plainMoney)).toBe(`Planned in 20 s: ${gain}.`);
    expect(searchSentence({ ...state, phase: 'stopped', seconds: 3 }, plainMoney)).toBe(
      `Stopped after 3 s: ${gain}.`,
    );
    expect(searchSentence({ ...state, protect: 0.9 }, plainMoney)).toBe(
      `Planned in 20 s, aiming for 9 of 10 lines on time: ${gain}.`,
    );
  });

  it('says what it gained so far while it goes on', () => {
    const running: SearchState = { ...state, phase: 'running', seconds: 4.7 };
    expect(searchSentence(running, plainMoney)).toBe(`Planning: 4 of 20 s, so far ${gain}.`);
    expect(searchSentence({ ...running, gist: state.startGist }, plainMoney)).toBe('Planning: 4 of 20 s.');
  });

  it('says what joining runs saved', () => {
    const joined = { ...state, joins: { count: 2, savedCents: 12_050 } };
    const said = `Planned in 20 s: ${gain}. Runs of one metal were joined 2 times: stock costs`;
    expect(searchSentence(joined, plainMoney)).toBe(`${said} 120.50 less.`);
    expect(searchSentence(joined, money('USD'))).toBe(`${said} $120.50 less.`);
  });

  it('says so when nothing of that differs, and when it failed', () => {
    const same = { ...state, gist: state.startGist };
    expect(searchSentence(same, plainMoney)).toMatch(
      /: as late as before, with as much changeover; better in the rest/,
    );
    expect(searchSentence({ ...same, objective: 1000 }, plainMoney)).toBe(
      'Planned in 20 s: no better plan was found.',
    );
    expect(searchSentence({ ...state, phase: 'failed' }, plainMoney)).toMatch(
      /failed; the plan is as it was. Try again/,
    );
  });

  it('draws the objective as stairs down to the present second', () => {
    const curve = [
      { seconds: 0, objective: 100 },
      { seconds: 5, objective: 50 },
    ];
    expect(curvePath({ curve, seconds: 10, budgetSeconds: 20 }, 200, 40)).toBe('M0.0 0.0H50.0V40.0H100.0');
    expect(curvePath({ curve: [], seconds: 10, budgetSeconds: 20 }, 200, 40)).toBe('');
  });
});
