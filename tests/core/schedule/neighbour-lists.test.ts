import fc from 'fast-check';
import { expect, it } from 'vitest';
import { NEIGHBOURS, neighbourLists } from '../../../core/schedule/search/moves/neighbour-lists.ts';
import { built } from './exact.ts';
import { seeds } from './hand-shop.ts';
import { randomShop } from './random-shop.ts';

it('an operation’s neighbours are those of all others that change over to it fastest, then those due nearest', () => {
  fc.assert(
    fc.property(seeds, fc.integer({ min: 1, max: 60 }), (seed, most) => {
      const problem = built(randomShop(seed, most));
      const movable = Int32Array.from(problem.fixed.keys()).filter((o) => problem.fixed[o] === 0);
      const neighbours = neighbourLists(problem, movable);
      for (let o = 0; o < problem.operations; o++) {
        const setup = problem.setups[problem.eligible[o]![0]!]!;
        const due = (k: number) => Math.min(1e12, problem.due[problem.jobOf[k]!]!);
        const positionOf = (k: number) => [
          setup.row(setup.classOf[k]!)[setup.classOf[o]!]!,
          Math.abs(due(k) - due(o)),
        ];
        const all = [...movable].filter((k) => k !== o && setup.classOf[k]! >= 0).map(positionOf);
        all.sort(([a, b], [c, d]) => a! - c! || b! - d!);
        expect([...neighbours(o)].map(positionOf)).toEqual(all.slice(0, NEIGHBOURS));
      }
    }),
    { numRuns: 300 },
  );
});
