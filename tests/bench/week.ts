import type { JobInput, MachineInput, ProblemInput } from '../../core/schedule/problem.ts';
import type { OpenInterval } from '../../core/schedule/working-time.ts';
import { Rng } from '../../core/rng.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;
const GAUGES = ['22', '24', '26', '29'];
const COLOURS = ['bare', 'bone', 'brick', 'moss', 'pine', 'sand', 'sky', 'white'];

/**
 * An invented week (or more) of a trim shop with `lines` order lines: 1 or 2 shears, 1 to 4 brakes, one shift of eight
 * hours with a break on five days, changeovers by gauge, colour and profile, due dates spread over the time the work
 * takes. With `crew` fewer people than machines. Whole seconds from a Monday midnight; the same seed, the same week.
 * Quantities and times are common practice, no source.
 */
export function inventedWeek(lines: number, seed: number, crew = false): ProblemInput {
  const rng = new Rng(seed);
  const shears = lines > 150 ? 2 : 1;
  const brakes = lines > 400 ? 4 : lines > 150 ? 3 : lines > 50 ? 2 : 1;
  const pick = <T>(items: readonly T[]): T => items[Math.floor(rng.next() ** 2 * items.length)]!;
  const open = workingDays(20 + Math.ceil(lines / 10));
  const shear = (k: number): MachineInput => ({
    id: `S${k + 1}`,
    stage: 'shear',
    initial: { gauge: '24', colour: 'white' },
    open,
    changeover: { combine: 'sum', attributes: { gauge: 480, colour: 240 } },
  });
  const brake = (k: number): MachineInput => ({
    id: `B${k + 1}`,
    stage: 'brake',
    initial: { gauge: '24', colour: 'white', profile: 'P1' },
    open,
    changeover: { combine: 'sum', attributes: { profile: 720, gauge: 300, colour: 60 } },
  });
  const machines = [
    ...Array.from({ length: shears }, (_, k) => shear(k)),
    ...Array.from({ length: brakes }, (_, k) => brake(k)),
  ];
  const profiles = Array.from({ length: 24 }, (_, k) => `P${k + 1}`);
  // About the days the brakes need, changeovers counted; most lines are due within them.
  const days = Math.max(3, Math.ceil((lines * 2400) / (brakes * 8 * HOUR)));
  const jobs = Array.from({ length: lines }, (_, j): JobInput => {
    const quantity = Math.round(Math.exp(rng.next() * Math.log(100)));
    const [gauge, colour] = [pick(GAUGES), pick(COLOURS)];
    const release = rng.next() < 0.8 ? 0 : rng.below(Math.ceil(days / 2)) * DAY;
    return {
      id: `L${j + 1}`,
      release,
      due: release + (1 + rng.below(days + 1)) * DAY + 16 * HOUR,
      weight: pick([1, 2, 3, 5]),
      operations: [
        {
          id: `L${j + 1}:shear`,
          stage: 'shear',
          seconds: 120 + 18 * quantity,
          attributes: { gauge, colour },
        },
        {
          id: `L${j + 1}:brake`,
          stage: 'brake',
          seconds: 180 + quantity * (30 + rng.below(50)),
          attributes: { gauge, colour, profile: pick(profiles) },
        },
      ],
    };
  });
  return {
    name: `${lines} lines${crew ? ', short of people' : ''}`,
    machines,
    jobs,
    now: 7 * HOUR,
    objective: { weightedTardiness: 1, changeover: 0.5, makespan: 0, flowTime: 0.01, stability: 0 },
    crew: crew ? [{ start: 0, end: days * 3 * DAY, people: machines.length - 1 }] : null,
  };
}

function workingDays(weeks: number): OpenInterval[] {
  const days = Array.from({ length: weeks * 7 }, (_, d) => d).filter((d) => d % 7 < 5);
  return days.flatMap((d) => [
    { start: d * DAY + 7 * HOUR, end: d * DAY + 11.5 * HOUR },
    { start: d * DAY + 12 * HOUR, end: d * DAY + 15.5 * HOUR },
  ]);
}
