import { describe, expect, it } from 'vitest';
import {
  cautionsAlong,
  cautionsFor,
  cautionsWhenBack,
  cautionsWhenDown,
  OVERTIME_CAUTION,
} from '../../../core/report/cautions.ts';
import { stepRows } from '../../../core/report/cutting-words.ts';
import { aStep } from '../../support/stock-builders.ts';
import { inches } from '../../support/writing.ts';

const STAGES = ['shear', 'brake'] as const;
const textOf = ({ governs, points }: ReturnType<typeof cautionsFor>): string =>
  [governs, ...points].join(' ');

describe.each(STAGES)('the cautions of a %s', (stage) => {
  const text = textOf(cautionsFor(stage));

  it('defer first to code, manual and employer', () => {
    expect(cautionsFor(stage).governs).toMatch(/local codes.*machine maker’s manual.*employer’s procedure/i);
  });

  it.each([
    ['hands', /hands clear/i],
    ['lock-out', /lock out and tag out/i],
    ['one stroke at a time', /single stroke/i],
    ['the pedal', /pedal covered/i],
    ['a signal between two people', /two people work, no stroke without the signal that they agreed on/i],
    ['who may run it', /trained and authorised/i],
  ])('name %s', (_, said) => expect(text).toMatch(said));

  it('have nobody hold a small piece by hand, and allow running strokes only with their guards', () => {
    expect(text.replace(/never (hold it )?by hand/g, '')).not.toMatch(/by hand/);
    expect(text).toMatch(/never (hold it )?by hand/);
    expect(text).toMatch(/only where set up and guarded for it/);
  });

  it('are whole sentences', () => {
    for (const point of cautionsFor(stage).points) expect(point).toMatch(/^[A-Z].*\.$/);
  });
});

it('what goes along through both steps has the cautions of both, each once', () => {
  const { points } = cautionsAlong(['shear', 'brake']);
  for (const stage of STAGES) expect(points).toEqual(expect.arrayContaining([...cautionsFor(stage).points]));
  expect(new Set(points).size).toBe(points.length);
});

it('at a machine that is down lock-out is the first thing said', () => {
  for (const stage of STAGES) {
    const down = cautionsWhenDown(stage);
    expect(down.governs).toMatch(/^Before anyone works on it: lock out, tag out/);
    expect(down.governs).toContain(cautionsFor(stage).governs);
    expect(textOf(down)).toMatch(/hands clear/i);
  }
});

it('before a machine that was down runs again, guards and locks are named first', () => {
  for (const stage of STAGES) {
    const back = cautionsWhenBack(stage);
    expect(back.governs).toMatch(
      /^Before it runs again: .*guards on.*lock is taken off by whoever put it on/,
    );
    expect(back.governs).toContain(cautionsFor(stage).governs);
  }
});

it('overtime names the rules on hours and working alone', () => {
  expect(OVERTIME_CAUTION).toMatch(/rules on working hours/);
  expect(OVERTIME_CAUTION).toMatch(/nobody works alone/);
});

it('a step of continuous strokes says what they need', () => {
  const shear = { lengthMm: 3100, backGaugeMm: { min: 5, max: 1000 }, minStripMm: 40 };
  const strokeOf = (stroke: 'single' | 'continuous') =>
    stepRows({ steps: [aStep({ stroke })], groups: [] }, { shear, units: inches })[0]?.stroke;
  expect(strokeOf('continuous')).toBe('continuous, only where set up and guarded for it');
  expect(strokeOf('single')).toBe('single');
});
