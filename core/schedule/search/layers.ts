import type { Problem } from '../problem.ts';

/** The positions of machines in routings that all go forward. */
export interface Layers {
  /** Per machine: does any operation it can do have a next step? */
  readonly feeds: Uint8Array;
  /** Machines nothing waits for. */
  readonly last: Int32Array;
  /** Is there a machine that others wait for and that waits for others? */
  readonly middle: boolean;
}

/** Layers of a problem with a `machineOrder`. */
export function layersOf({ operations, machines, eligible, firstOf, jobOf, machineOrder }: Problem): Layers {
  const feeds = new Uint8Array(machines);
  const waits = new Uint8Array(machines);
  for (let o = 0; o < operations; o++)
    for (const m of eligible[o]!) {
      if (o + 1 < firstOf[jobOf[o]! + 1]!) feeds[m] = 1;
      if (o > firstOf[jobOf[o]!]!) waits[m] = 1;
    }
  return {
    feeds,
    last: machineOrder!.filter((m) => feeds[m] === 0),
    middle: feeds.some((any, m) => any === 1 && waits[m] === 1),
  };
}
