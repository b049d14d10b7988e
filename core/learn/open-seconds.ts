import { intervalAt, type WorkingTime } from '../schedule/working-time.ts';

/** Seconds of [from, to) in which the machine is open. */
export function openSecondsBetween(open: WorkingTime, from: number, to: number): number {
  let sum = 0;
  for (let k = intervalAt(open, from); k < open.start.length && open.start[k]! < to; k++)
    sum += Math.max(0, Math.min(open.end[k]!, to) - Math.max(open.start[k]!, from));
  return sum;
}
