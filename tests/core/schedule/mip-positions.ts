import { changeoverSeconds } from '../../../core/schedule/check-hours.ts';
import type { ProblemInput } from '../../../core/schedule/problem.ts';
import { Programme } from './mip-programme.ts';

/**
 * One machine, lines of equal weight without releases, by positions in the queue: z is 1 when a line is at a position, w when
 * one follows another from there, and the tardiness of a position needs no large constants.
 * Sources (from memory): H. M. Wagner, Naval Research Logistics Quarterly 6, 1959, pp. 131-140 (positions); J.-C. Picard and
 * M. Queyranne, Operations Research 26, 1978, pp. 86-110 (who follows whom from which position).
 */
export function positionsProgramme(input: ProblemInput): Programme {
  const lp = new Programme();
  const { jobs, objective } = input;
  const { initial, changeover } = input.machines[0]!;
  const asked = jobs.map((job) => job.operations[0]!.attributes ?? {});
  const all = [...jobs.keys()];
  const sum = (terms: readonly string[]) => terms.join(' + ');
  for (const k of all) {
    const ends: string[] = [];
    for (const j of all) {
      const z = lp.choice(`z_${k}_${j}`);
      const work = jobs[j]!.operations[0]!.seconds;
      for (const i of k === 0 ? [-1] : all.filter((i) => i !== j)) {
        const seconds = changeoverSeconds(changeover, i < 0 ? (initial ?? {}) : asked[i]!, asked[j]!);
        const follows = i < 0 ? z : `w_${k}_${i}_${j}`;
        lp.cost(objective.changeover * seconds, follows);
        ends.push(`${seconds + work} ${follows}`);
      }
      if (k > 0) lp.row(`${sum(all.filter((i) => i !== j).map((i) => `w_${k}_${i}_${j}`))} - ${z} = 0`);
      if (k > 0)
        lp.row(`${sum(all.filter((i) => i !== j).map((i) => `w_${k}_${j}_${i}`))} - z_${k - 1}_${j} = 0`);
    }
    lp.row(`${sum(all.map((j) => `z_${k}_${j}`))} = 1`);
    lp.row(`${sum(all.map((position) => `z_${position}_${k}`))} = 1`);
    lp.row(`c_${k}${k === 0 ? '' : ` - c_${k - 1}`} - ${ends.join(' - ')} = 0`);
    lp.row(`t_${k} - c_${k} + ${sum(all.map((j) => `${jobs[j]!.due ?? 1e6} z_${k}_${j}`))} >= 0`);
    lp.cost(objective.weightedTardiness, `t_${k}`);
  }
  return lp;
}
