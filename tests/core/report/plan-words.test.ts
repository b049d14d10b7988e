import { describe, expect, it } from 'vitest';
import type { PlanComparison } from '../../../core/planning/compare-plans.ts';
import {
  changedRows,
  movedLines,
  planName,
  planTitle,
  sumRows,
  sumWords,
} from '../../../core/report/plan-words.ts';
import { at, ZONE } from '../../support/builders.ts';

const sum = { lateLines: 1, lateSeconds: 7200, changeovers: 3, changeoverSeconds: 1500 };
const monday = (clock: string) => at('2026-11-30', clock);

describe('a plan by name', () => {
  const when = monday('07:10');
  it.each([
    ['named', 'Calm', 'Kept as “Calm”', '“Calm”, kept Mon 30 Nov 07:10'],
    [
      'published',
      'for the night',
      'Published: for the night',
      'Plan published Mon 30 Nov 07:10: for the night',
    ],
    ['published', '', 'Published', 'Plan published Mon 30 Nov 07:10'],
  ] as const)('%s “%s”', (what, name, short, whole) => {
    expect(planName({ what, name, at: when })).toBe(short);
    expect(planTitle({ what, name, at: when }, ZONE)).toBe(whole);
  });
});

it('what changed in a queue is said with the number it has there now', () => {
  const change = { machineId: null, before: null, after: null } as const;
  const rows = changedRows(
    [
      { ...change, operation: '1042/1:brake', what: 'earlier' },
      { ...change, operation: '1043/1:brake', what: 'came', machineId: 'B2' },
      { ...change, operation: '1044/1:brake', what: 'went', machineId: 'B2' },
      { ...change, operation: '1045/1:brake', what: 'removed' },
      { ...change, operation: '1046/1:brake', what: 'added' },
    ],
    ['1042/1:brake', '1046/1:brake', '1043/1:brake'],
  );
  expect(rows.map(({ lineId, words }) => `${lineId} ${words}`)).toEqual([
    '1042/1 earlier, now No. 1',
    '1043/1 from B2, now No. 3',
    '1044/1 to B2',
    '1045/1 no longer in the plan',
    '1046/1 new, now No. 2',
  ]);
});

describe('two plans in words', () => {
  const due = monday('12:00');
  const late = { lineId: '1042/2', before: monday('11:00'), after: monday('13:00'), due };
  const later = { lineId: '1042/1', before: monday('08:00'), after: monday('08:30'), due };
  const saved = { lineId: '1050/1', before: monday('15:00'), after: monday('10:00'), due };
  const comparison: PlanComparison = {
    before: sum,
    after: { ...sum, lateLines: 2, changeovers: 4 },
    earlier: [saved],
    later: [late, later],
    newlyLate: [late],
    noLongerLate: [saved],
    otherMachine: [],
  };

  it('have their figures side by side', () => {
    expect(sumRows(comparison).map(({ label, before, after }) => [label, before, after])).toEqual([
      ['Late lines', '1', '2'],
      ['Hours late', '2 h', '2 h'],
      ['Changeovers', '3', '4'],
      ['Time changing over', '25 min', '25 min'],
    ]);
    expect(sumWords(sum)).toBe('1 line late, 3 changeovers (25 min)');
  });

  it('have each line once, newly late ones first', () => {
    expect(movedLines(comparison).map(({ lineId, words, turn }) => [lineId, words, turn])).toEqual([
      ['1042/2', '2 h later', 'newly late'],
      ['1050/1', '5 h earlier', 'no longer late'],
      ['1042/1', '30 min later', null],
    ]);
  });
});
