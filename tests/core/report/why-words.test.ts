import { describe, expect, it } from 'vitest';
import type { PlanChange, Why } from '../../../core/planning/answers.ts';
import { applyCommand } from '../../../core/edit/apply.ts';
import { openedWith, overtimeCommand } from '../../../core/edit/overtime.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import { whyText, whyWords } from '../../../core/report/why-words.ts';
import { openIntervals } from '../../../core/time/working-time.ts';
import { aBrake, aCalendar, aShear, aShop, at, NOW, ZONE } from '../../support/builders.ts';
import { aTool } from '../../support/tool-builders.ts';

const MIN = 60;
type Cause = Why['causes'][number];

/** Stretches one after the other from Monday 06:00: kind, step, minutes, what is ahead. */
function chain(...stretches: [Cause['kind'], 'shear' | 'brake' | null, number, ...string[]][]): Cause[] {
  let from: number = NOW;
  return stretches.map(([kind, step, minutes, ...ahead]) => {
    const begin = from;
    from += minutes * MIN;
    return {
      kind,
      from: begin,
      to: from,
      seconds: minutes * MIN,
      operation: step && `1042/2:${step}`,
      machine: step && { shear: 'S1', brake: 'B1' }[step],
      blockedBy: ahead.map((line) => `${line}:${step}`),
      held: [],
    };
  });
}

/** Line 1042/2 ends where its causes do. */
function aWhy(causes: Cause[], due: number | null, changes: PlanChange[] = []): Why {
  const end = causes.at(-1)!.to;
  return {
    job: '1042/2',
    end,
    due,
    late: due === null ? 0 : Math.max(0, end - due),
    causes,
    awaited: [],
    changes,
  };
}

const aChange = (own: Partial<PlanChange>): PlanChange => ({
  kind: 'earlier-position',
  moves: [],
  overtime: null,
  queues: {},
  end: at('2026-11-30', '12:00'),
  late: 0,
  later: [],
  earlier: [],
  objectiveAdded: -1,
  ...own,
});

const overAndOver = chain(
  ['release', null, 60],
  ['waiting-for-machine', 'shear', 30, '1042/1', '1043/1'],
  ['closed', 'shear', 15],
  ['waiting-for-machine', 'shear', 30, '1043/1', '1044/1', '1045/1'],
  ['changeover', 'shear', 5],
  ['work', 'shear', 40],
  ['queue-choice', 'brake', 20, '1044/1'],
  ['idle-for-release', 'brake', 15, '1045/1'],
  ['pinned-or-frozen', 'brake', 10, '1046/1'],
  ['work', 'brake', 35],
);

describe('why a line is late, in words', () => {
  const words = whyWords(aShop(), aWhy(overAndOver, at('2026-11-30', '10:00')));

  it('says when it ends, how late that is, and what the causes add up to', () => {
    expect(words.question).toBe('Why late?');
    expect(words.title).toBe('1042/2 ends Mon 30 Nov 10:20, 20 min late: it is due Mon 30 Nov 10:00.');
    expect(words.sum).toBe('From Mon 30 Nov 06:00 to its end: 4 h 20 min.');
  });

  it('tells each cause of each step once, in order, with its minutes and machine', () => {
    expect(words.causes.map((c) => `${c.seconds / MIN} ${c.words}`)).toEqual([
      '60 Its work order says not before Mon 30 Nov 07:00',
      '60 Shear does 1042/1, 1043/1 and 2 more lines first',
      '15 Shear is closed',
      '5 Changeover of Shear for it',
      '40 Shearing on Shear',
      '20 Brake waits idle for the blanks of 1044/1, which is before it in the queue',
      '15 Brake waits idle for 1045/1, which is before it in the queue and may not start yet (“Not before” on its work order, or metal that has not come)',
      '10 Brake does 1046/1 first, and what is started, pinned or in the frozen window keeps its position',
      '35 Bending on Brake',
    ]);
  });

  it('adds up: all causes to the time until the end, what is late of them to the lateness', () => {
    const sum = (of: (c: (typeof words.causes)[number]) => number) =>
      words.causes.reduce((total, cause) => total + of(cause), 0);
    expect(sum((c) => c.seconds)).toBe(260 * MIN);
    expect(sum((c) => c.lateSeconds)).toBe(20 * MIN);
    expect(sum((c) => c.share)).toBeCloseTo(1, 12);
  });

  it('names the operations to look at: its own, and those ahead of it', () => {
    expect(words.causes[1]?.operations).toEqual([
      '1042/2:shear',
      '1042/1:shear',
      '1043/1:shear',
      '1044/1:shear',
      '1045/1:shear',
    ]);
    expect(words.causes[0]?.operations).toEqual([]);
  });

  it('says of an overdue line how late it was before, and leaves that out of the causes', () => {
    const overdue = whyWords(aShop(), aWhy(chain(['work', 'brake', 30]), NOW - 90 * MIN));
    expect(overdue.title).toMatch(/, 2 h late: it is due Mon 30 Nov 04:30\.$/);
    expect(overdue.sum).toBe('It was 1 h 30 min late before. From Mon 30 Nov 06:00 to its end: 30 min.');
    expect(overdue.causes[0]?.lateSeconds).toBe(0);
  });

  it('of a line on time says how long before its due date it ends', () => {
    const fine = whyWords(
      aShop(),
      aWhy(chain(['crew', 'brake', 30], ['work', 'brake', 30]), NOW + 180 * MIN),
    );
    expect(fine.question).toBe('Why not sooner?');
    expect(fine.title).toBe('1042/2 ends Mon 30 Nov 07:00, 2 h before it is due Mon 30 Nov 09:00.');
    expect(fine.causes[0]?.words).toBe('Too few people are free to run Brake');
    expect(fine.help).toBe('');
  });

  it('says what a brake waits for, where that is, and until when', () => {
    const [waiting, work] = chain(['held-elsewhere', 'brake', 40, '1043/1'], ['work', 'brake', 30]);
    const held = [
      { thing: 'H1', machine: 'B2', until: NOW + 20 * MIN },
      { thing: 'H1', machine: 'B2', until: NOW + 40 * MIN },
      { thing: 'V8', machine: 'B3', until: NOW + 30 * MIN },
    ];
    const shop = aShop({
      machine: [aShear(), aBrake(), aBrake({ id: 'B2', name: 'Long brake' })],
      tool: [aTool({ id: 'H1', name: 'Hemming tools' })],
    });
    expect(whyWords(shop, aWhy([{ ...waiting!, held }, work!], null)).causes[0]?.words).toBe(
      'Brake waits for Hemming tools, at Long brake until Mon 30 Nov 06:40, and V8, at B3 until Mon 30 Nov 06:30',
    );
  });

  it('comes out for a terminal line by line', () => {
    expect(whyText(whyWords(aShop(), aWhy(chain(['work', 'brake', 30]), NOW + 20 * MIN)))).toEqual([
      'Why late? 1042/2 ends Mon 30 Nov 06:30, 10 min late: it is due Mon 30 Nov 06:20.',
      'From Mon 30 Nov 06:00 to its end: 30 min.',
      '        30 min  Bending on Brake (10 min of it late)',
      'No single change ends it earlier.',
    ]);
  });
});

describe('changes that help, in words', () => {
  const told = (...changes: PlanChange[]) => whyWords(aShop(), aWhy(overAndOver, NOW, changes));
  const earlier = aChange({ moves: [{ operation: '1042/2:shear', machine: 'S1', position: 0 }] });

  it('say what to do, in places counted from 1', () => {
    const swap = [
      { operation: '1042/2:brake', machine: 'B1', position: 2 },
      { operation: '1043/1:brake', machine: 'B1', position: 5 },
    ];
    expect(
      told(
        earlier,
        aChange({ moves: [...earlier.moves, { operation: '1042/2:brake', machine: 'B1', position: 3 }] }),
        aChange({ kind: 'swap', moves: swap }),
      ).changes.map((change) => change.title),
    ).toEqual([
      'Move its shearing to position 1 on Shear.',
      'Move its shearing to position 1 on Shear and its bending to position 4 on Brake.',
      'Swap its bending with that of 1043/1, to position 3 on Brake.',
    ]);
  });

  it('say what they do for the line, and what the list of them holds', () => {
    expect(told(earlier).help).toBe('One single change would do:');
    expect(told(earlier).changes[0]?.effect).toBe('It then ends Mon 30 Nov 12:00, on time.');
    const late = told(aChange({ late: 600 }));
    expect(late.changes[0]?.effect).toBe('It then ends Mon 30 Nov 12:00, still 10 min late.');
    expect(late.help).toMatch(/^No single change makes it on time/);
  });

  it('say what they cost: the lines they make late, those that stay in time, the plan as a whole', () => {
    const shift = (job: string, lateBefore: number, lateAfter: number) => ({
      job,
      before: 0,
      after: 1,
      lateBefore,
      lateAfter,
    });
    const later = [shift('1043/1', 0, 1200), shift('1044/1', 60, 660), shift('5', 0, 60), shift('6', 0, 0)];
    expect(told(aChange({ later, objectiveAdded: 7200 })).changes[0]?.cost).toBe(
      'Makes 1043/1 late by 20 min, 1044/1 later by 10 min and 1 more line later. 1 line ends later, still by its due date. Costs as much as one usual line 2 h late.',
    );
  });
});

describe('overtime for a line', () => {
  const shop = aShop({
    calendar: [aCalendar(), aCalendar({ id: 'own', name: 'Brake hours' })],
    machine: [aBrake({ calendarId: 'own' }), aBrake({ id: 'B2', name: 'Second brake' }), aShear()],
  });
  const extra = { machine: 'B1', from: at('2026-11-30', '15:30'), seconds: 45 * MIN };

  it('names the machine, the minutes and the hours, and who is open with it', () => {
    const [own, shared] = whyWords(
      shop,
      aWhy(overAndOver, NOW, [
        aChange({ kind: 'overtime', overtime: extra }),
        aChange({ kind: 'overtime', overtime: { ...extra, machine: 'S1' } }),
      ]),
    ).changes;
    expect(own?.title).toBe('Keep Brake open 45 min longer, Mon 30 Nov 15:30 to 16:15.');
    expect(own?.cost).toBe(
      'Costs 45 min of overtime. Nothing becomes late. Costs next to nothing by your priorities.',
    );
    expect(shared?.caution).toMatch(/working hours.*alone/);
    expect(shared?.cost).toMatch(/overtime\. Second brake keeps the same calendar and is open then too\./);
    expect(openedWith(shop, 'S1')).toEqual(['B2', 'S1']);
  });

  it('goes into the calendar to the minute, split at midnight, and opens exactly that time', () => {
    const late = { ...extra, from: at('2026-11-30', '22:00'), seconds: 3 * 3600 - 20 };
    const command = overtimeCommand(shop, late, 'For 1042/2')!;
    const edit = applyCommand(shop, command);
    if (!edit.ok) throw new Error(edit.issues[0]?.message);
    const calendar = withChanges(shop, edit.value.changes).calendar.find((c) => c.id === 'own')!;
    expect(calendar.overtime.slice(1)).toEqual([
      { name: 'For 1042/2', date: '2026-11-30', start: '22:00', end: '24:00' },
      { name: 'For 1042/2', date: '2026-12-01', start: '00:00', end: '01:00' },
    ]);
    const open = openIntervals(calendar, [], ZONE, at('2026-11-30', '20:00'), at('2026-12-01', '06:00'));
    expect(open).toEqual({ ok: true, value: [{ start: late.from, end: late.from + 3 * 3600 }] });
  });

  it('is not to be had for a machine that is gone', () => {
    expect(overtimeCommand(shop, { ...extra, machine: 'X' }, 'For 1042/2')).toBeNull();
  });
});
