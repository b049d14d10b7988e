import type { Problem } from '../problem.ts';
import type { Changeover } from '../changeover.ts';

/**
 * Changeover seconds no plan can avoid: per stage, every value that some operation asks for and no machine of the stage
 * has set up must be changed to at least once. Where the attributes add up the costs do, else the longest counts.
 * Shops whose operations name their own machines, or whose machines of a stage differ in their rules, get 0.
 */
export function changeoverBound(problem: Problem): number {
  const { machines, jobs } = problem.input;
  const operations = jobs.flatMap((job) => job.operations);
  let total = 0;
  for (const stage of new Set(machines.map((machine) => machine.stage))) {
    const here = machines.filter((machine) => machine.stage === stage);
    const rules = here[0]!.changeover;
    if (
      rules === null ||
      here.some((m) => m.initial === null || JSON.stringify(m.changeover) !== JSON.stringify(rules))
    )
      continue;
    const asked = operations.filter((_, o) =>
      problem.eligible[o]!.every((m) => problem.tracks[m]!.machine.stage === stage),
    );
    const costs = Object.keys(rules.attributes).map((attribute) => {
      if (here.some((machine) => machine.initial![attribute] === undefined)) return 0;
      const values = new Set(
        asked.map((o) => o.attributes?.[attribute]).filter((value) => value !== undefined),
      );
      // What runs already is set up already, also where it could have run at another stage.
      for (const o of operations)
        if (here.some((machine) => machine.id === o.started?.machine))
          values.delete(o.attributes?.[attribute] ?? '');
      for (const machine of here) values.delete(machine.initial![attribute]!);
      return [...values].reduce((sum, value) => sum + cheapest(rules, attribute, value), 0);
    });
    total += rules.combine === 'sum' ? costs.reduce((a, b) => a + b, 0) : Math.max(0, ...costs);
  }
  return total;
}

function cheapest(rules: Changeover, attribute: string, value: string): number {
  if (rules.pairs?.attribute === attribute) return 0;
  const exceptions = (rules.exceptions ?? []).filter((e) => e.attribute === attribute && e.to === value);
  return Math.min(rules.attributes[attribute]!, ...exceptions.map((e) => e.seconds));
}
