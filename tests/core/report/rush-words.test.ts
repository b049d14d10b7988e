import { describe, expect, it } from 'vitest';
import type { RushWay } from '../../../core/planning/answers.ts';
import { lateOf, lateSentence, savedSentence, someOf } from '../../../core/report/late-words.ts';
import { adviceSentence, frozenSentence, rushLabel, wayWords } from '../../../core/report/rush-words.ts';
import { aLine, anOrder, aShop, at, someSettings } from '../../support/builders.ts';

const HOUR = 3600;
const shift = (job: string, lateBefore: number, lateAfter: number): RushWay['later'][number] => ({
  job,
  before: 0,
  after: lateAfter - lateBefore,
  lateBefore,
  lateAfter,
});

const aWay = (own: Partial<RushWay> = {}): RushWay => ({
  way: 'front',
  queues: {},
  ready: at('2026-12-01', '14:30'),
  late: 0,
  changeoversAdded: 0,
  changeoverSecondsAdded: 0,
  later: [],
  earlier: [],
  objectiveAdded: 0,
  ...own,
});
/** 1045 is another rush; who is whose customer stands with the order. */
const shop = aShop({
  order: [
    anOrder({ id: '1043', customer: 'Invented Gutters' }),
    anOrder({ id: '1044', customer: 'Invented Sheds' }),
    anOrder({ id: '1045', customer: 'Invented Barns', rush: true }),
  ],
  line: ['1043', '1044', '1045'].map((orderId) => aLine({ orderId })),
});
const words = (own: Partial<RushWay> = {}, weights = someSettings().weights) =>
  wayWords(aWay(own), { ...shop, settings: someSettings({ weights }) });

describe('lines that become late, in a sentence', () => {
  it('names the worst and counts the others', () => {
    const later = lateOf([
      shift('1043/1', 0, 2 * HOUR),
      shift('1044/1', HOUR, 1.5 * HOUR),
      shift('1045/1', 0, 60),
      shift('1046/1', 0, 0),
    ]);
    expect(lateSentence(later)).toBe(
      'Makes 1043/1 late by 2 h, 1044/1 later by 30 min and 1 more line later.',
    );
    expect(lateSentence(later, 1)).toBe('Makes 1043/1 late by 2 h and 2 more lines later.');
    expect(lateSentence(later, 3)).toMatch(/1045\/1 late by 1 min\.$/);
    expect(lateSentence([])).toBe('Nothing becomes late.');
  });

  it('says who is in time again, or nothing', () => {
    expect(savedSentence(['1050/2', '1051/1', '1052/1'])).toBe('1050/2, 1051/1 and 1 more in time again.');
    expect(savedSentence([])).toBe('');
    expect(someOf([], 2)).toBe('');
  });
});

describe('a way to take a rush in, in words', () => {
  it('says when it is ready, on the shop’s wall clock, and whether that is in time', () => {
    expect(words()).toMatchObject({ ready: 'Ready Tue 1 Dec 14:30', onTime: true, timely: 'on time' });
    expect(words({ late: 3 * HOUR })).toMatchObject({ onTime: false, timely: '3 h late' });
  });

  it('tells lines that become late from those that only end later', () => {
    const later = [shift('1043/1', 0, HOUR), shift('1044/1', 0, 0), shift('1045/1', 0, 0)];
    expect(
      words({ later, earlier: [shift('1050/1', HOUR, 0), shift('1051/1', 2 * HOUR, HOUR)] }),
    ).toMatchObject({
      others: 'Makes 1043/1 late by 1 h. 1050/1 in time again.',
      delayed: '2 lines end later, still by their due date.',
    });
    expect(words({ later: later.slice(1, 2) })).toMatchObject({
      others: 'Nothing becomes late.',
      delayed: '1 line ends later, still by its due date.',
    });
    expect(words().delayed).toBe('');
  });

  it('names other rush orders that become late first, and everyone with the customer', () => {
    const later = [shift('1043/1', 0, 3 * HOUR), shift('1045/1', 0, HOUR), shift('1044/1', HOUR, 2 * HOUR)];
    expect(words({ later })).toMatchObject({
      rushOthers: 'Makes another rush late: 1045/1 late by 1 h.',
      others: 'Makes 1043/1 late by 3 h and 1044/1 later by 1 h.',
      allLate: [
        { lineId: '1045/1', words: '1045/1 late by 1 h', customer: 'Invented Barns' },
        { lineId: '1043/1', words: '1043/1 late by 3 h', customer: 'Invented Gutters' },
        { lineId: '1044/1', words: '1044/1 later by 1 h', customer: 'Invented Sheds' },
      ],
    });
    expect(words({ later: later.slice(1, 2) }).others).toBe('No other line becomes late.');
    expect(words()).toMatchObject({ rushOthers: '', allLate: [] });
  });

  it('says why the advised way is not the cheapest one', () => {
    const cheap = aWay({ way: 'run', late: 2 * HOUR });
    expect(adviceSentence(aWay(), cheap)).toBe(
      'Advised since it keeps the rush’s date; “into the matching run” costs less.',
    );
    expect(adviceSentence(aWay({ late: HOUR }), cheap)).toBe(
      'Advised since it comes 1 h sooner to the rush’s date; “into the matching run” costs less.',
    );
    expect(adviceSentence(cheap, cheap)).toBe('');
  });

  it('names the frozen window where it stands in the way', () => {
    const frozen = { hours: 4, operations: 3, ready: at('2026-12-01', '14:30'), late: 0 };
    expect(frozenSentence(frozen, someSettings())).toBe(
      'The frozen window of 4 h holds 3 operations in front of it. Without it: ready Tue 1 Dec 14:30, on time.',
    );
  });

  it.each([
    [2, 1440, '2 changeovers added, +24 min.'],
    [1, 360, '1 changeover added, +6 min.'],
    [-1, -480, '1 changeover saved, −8 min.'],
    [1, 0, '1 changeover added, no time.'],
    [0, 120, 'As many changeovers, 2 min more.'],
    [0, -120, 'As many changeovers, 2 min less.'],
    [0, 0, 'No changeover added.'],
  ])('counts %i changeovers of %i s', (changeoversAdded, changeoverSecondsAdded, said) => {
    expect(words({ changeoversAdded, changeoverSecondsAdded }).changeovers).toBe(said);
  });

  it('weighs the cost in lateness of one usual line, by the shop’s own priorities', () => {
    const weights = (lateness: number) => ({ ...someSettings().weights, lateness });
    expect(words({ objectiveAdded: 2 * HOUR }, weights(1)).cost).toBe(
      'Costs as much as one usual line 2 h late.',
    );
    expect(words({ objectiveAdded: 2 * HOUR }, weights(4)).cost).toMatch(/line 30 min late/);
    expect(words({ objectiveAdded: -2 * HOUR }, weights(1)).cost).toMatch(/^Saves as much as/);
    expect(words({ objectiveAdded: 20 }, weights(1)).cost).toMatch(/next to nothing/);
    expect(words({ objectiveAdded: 7200 }, weights(0)).cost).toBe('Cost by your priorities: 7200.');
  });

  it('gives the history its name', () => {
    expect(rushLabel(['1042/1'], 'run')).toBe('Rush 1042/1: into the matching run');
    expect(rushLabel(['1042/1', '1042/2'], 'replan')).toBe('Rush of 2 lines: plan again around it');
  });
});
