import { expect, it } from 'vitest';
import { readPlace } from '../../../renderer/router.ts';
import { drawingScale, scaleName } from '../../../renderer/screens/print/drawing-scale.ts';
import { changeoverWords, until, when } from '../../../renderer/screens/print/paper-words.ts';
import { printAddress, readPrintChoice } from '../../../renderer/screens/print/print-choice.ts';
import { at, ZONE } from '../../support/builders.ts';

it('the address of a print says what it was made for', () => {
  for (const choice of [
    { machineId: 'S1', days: 3, drawings: true },
    { machineId: null, days: 28, drawings: false },
  ])
    expect(readPrintChoice(readPlace(printAddress(choice)))).toEqual(choice);
});

it('days that make no sense in an address become a week', () => {
  for (const days of ['0', '29', '2.5', 'x'])
    expect(readPrintChoice(readPlace(`#/print/dispatch?days=${days}`)).days).toBe(7);
});

it('an operation on paper ends with a weekday only when that is another day', () => {
  const start = at('2026-12-01', '14:30');
  expect(`${when(start, ZONE, false)} ${until(start, at('2026-12-01', '15:00'), ZONE, false)}`).toBe(
    'Tue 14:30 to 15:00',
  );
  expect(until(start, at('2026-12-02', '08:10'), ZONE, false)).toBe('to Wed 08:10');
  expect(until(start, at('2026-12-02', '08:10'), ZONE, true)).toBe('to Wed 2 Dec 08:10');
});

it('a changeover on paper says how long and what to change', () => {
  const steps = [
    { attribute: 'gauge', from: '24 ga', to: '26 ga' },
    { attribute: 'colour', from: null, to: 'Moss' },
  ] as const;
  expect(changeoverWords(780, steps)).toBe('Change over, 13 min: gauge 24 ga → 26 ga, colour Moss');
});

it('a drawing takes the largest usual scale that fits the paper', () => {
  expect(scaleName(drawingScale({ width: 60, height: 40 }))).toBe('2 : 1');
  expect(scaleName(drawingScale({ width: 130, height: 40 }))).toBe('1 : 1');
  expect(scaleName(drawingScale({ width: 130, height: 90 }))).toBe('1 : 2');
  expect(scaleName(drawingScale({ width: 90_000, height: 90 }))).toBe('1 : 50');
});
