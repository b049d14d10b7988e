import { describe, expect, it } from 'vitest';
import { gistOf } from '../../../core/planning/figures.ts';
import { linesLeftOut } from '../../../core/planning/left-out.ts';
import { overdueAt } from '../../../core/planning/lateness.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { aLine, anOrder, aShop, at, NOW } from '../../support/builders.ts';

const HOUR = 3600;

describe('the part of hours late that no plan can save', () => {
  it('is what a line was overdue when the plan begins', () => {
    expect(overdueAt({ due: NOW - 5 * HOUR, end: NOW + 2 * HOUR }, NOW)).toBe(5 * HOUR);
  });

  it('is nothing for a line that was due later, however late it ends', () => {
    expect(overdueAt({ due: NOW + HOUR, end: NOW + 90 * HOUR }, NOW)).toBe(0);
    expect(overdueAt({ due: NOW, end: NOW + 90 * HOUR }, NOW)).toBe(0);
  });

  it('is never more than the line is late', () => {
    expect(overdueAt({ due: NOW - 5 * HOUR, end: NOW - 3 * HOUR }, NOW)).toBe(2 * HOUR);
    expect(overdueAt({ due: NOW - 5 * HOUR, end: NOW - 8 * HOUR }, NOW)).toBe(0);
  });
});

describe('a plan in figures', () => {
  // Two lines due on the Friday before, 61 hours before the plan begins, and one due in a month.
  const shop = aShop({
    order: [anOrder({ due: at('2026-11-27') }), anOrder({ id: '1043', due: at('2026-12-28') })],
    line: [aLine(), aLine({ number: 2 }), aLine({ orderId: '1043' })],
  });
  const view = viewPlan(shop, NOW);
  if (!view.ok) throw new Error('the test shop cannot be planned');
  const { figures, schedule } = view.value;

  it('tells the hours that lines were overdue already from those of the plan', () => {
    expect(figures).toMatchObject({ lines: 3, lateLines: 2, overdue: 2 * 61 * HOUR });
    const ends = schedule.ends['1042/1']! + schedule.ends['1042/2']!;
    expect(figures.tardiness - figures.overdue).toBe(ends - 2 * NOW);
  });

  it('is told at a glance by the due dates that customers were given', () => {
    expect(gistOf(shop, schedule)).toEqual({
      lateLines: 2,
      lateSeconds: figures.tardiness,
      changeoverSeconds: figures.changeoverSeconds,
    });
  });
});

describe('lines that cannot be planned', () => {
  const ofTwo = aShop({
    order: [anOrder({ due: at('2026-12-28') })],
    line: [aLine(), aLine({ number: 2, gauge: '26', colourId: 'bone' })],
  });

  it('count among the lines, and keep the share on time from all of them', () => {
    const view = viewPlan(ofTwo, NOW);
    if (!view.ok) throw new Error('the test shop cannot be planned');
    expect(view.value.figures).toMatchObject({ lines: 1, leftOut: 1, lateLines: 0, onTimeShare: 0.5 });
  });

  it('count once, however much speaks against each', () => {
    const issue = { field: 'girth', message: '', advice: '' };
    const subjects = ['line 1042/1', 'line 1042/1', 'line 1042/2, part cap'];
    expect(linesLeftOut(subjects.map((subject) => ({ ...issue, subject })))).toEqual(['1042/1', '1042/2']);
  });
});
