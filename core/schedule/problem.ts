import type { Attributes, Changeover } from './changeover.ts';
import type { SetupTable } from './setup.ts';
import type { OpenInterval, WorkingTime } from './working-time.ts';

/**
 * What the scheduling engine is given: machines, jobs, calendars, what is fixed, and the objective.
 * It knows nothing of what the machines make; core/planning/to-problem.ts translates.
 *
 * A Problem is built once by `buildProblem` (validated, frozen) and trusted afterwards. Times are whole seconds on
 * one axis (epoch seconds in the app, from 0 in problem files), intervals half-open.
 */

export interface MachineInput {
  readonly id: string;
  readonly stage: string;
  /** What is set up now; null: nothing known, so the first operation needs no changeover. */
  readonly initial: Attributes | null;
  readonly changeover: Changeover | null;
  /** Open hours, ascending and disjoint; null: always open. Work and changeovers pause when closed and go on after. */
  readonly open: readonly OpenInterval[] | null;
  /** Closed time that no overtime can open, ascending and disjoint: it is out of service, or its people have a break. */
  readonly noOvertime?: readonly OpenInterval[];
  /** Not before this instant (it is still busy with something outside the plan). */
  readonly availableFrom?: number;
  /** Takes any number of operations at once, so that none waits for another: work that is done elsewhere. Without changeover. */
  readonly unlimited?: boolean;
}

export interface OperationInput {
  readonly id: string;
  readonly stage: string;
  /** Work on the machine at normal speed, whole seconds ≥ 0. */
  readonly seconds: number;
  /**
   * Machines that can do it, with their own seconds where they differ and what it asks for besides there (`attributesOn`);
   * missing: every machine of the stage.
   */
  readonly machines?: readonly {
    readonly id: string;
    readonly seconds?: number;
    readonly attributes?: Attributes;
    readonly holds?: readonly string[];
  }[];
  readonly attributes?: Attributes;
  /**
   * Names of things of which there is one and which it holds from the start of its changeover to its end, closed hours
   * included; what has started, from now. No two machines hold the same thing at once.
   */
  readonly holds?: readonly string[];
  /** People it occupies while it (and its changeover) runs; default 1. Counts only where `crew` is limited. */
  readonly crew?: number;
  /**
   * Transfer lots: the next operation of the job may start when this share of the work is done (default 1: all of it).
   */
  readonly transferShare?: number;
  /** Already started on this machine at this instant; it keeps its position at the front. */
  readonly started?: { readonly machine: string; readonly at: number };
}

export interface JobInput {
  readonly id: string;
  readonly release: number;
  /** null: never tardy. */
  readonly due: number | null;
  readonly weight: number;
  readonly operations: readonly OperationInput[];
}

/** Weights of the objective's terms; every term is in seconds. */
export interface ObjectiveWeights {
  readonly weightedTardiness: number;
  readonly changeover: number;
  readonly makespan: number;
  /** Σ (end − release). */
  readonly flowTime: number;
  /** Σ |end − end in the reference plan| over jobs that are in it. */
  readonly stability: number;
}

/** A crew limit over an interval: no more than `people` at work at once on all machines together. */
export interface CrewInterval extends OpenInterval {
  readonly people: number;
}

export interface ProblemInput {
  readonly name: string;
  readonly machines: readonly MachineInput[];
  readonly jobs: readonly JobInput[];
  readonly objective: ObjectiveWeights;
  /** Nothing may start before this instant. */
  readonly now: number;
  /** One job order on all machines (permutation flow shop). */
  readonly sameOrder?: boolean;
  /** Pinned: the search leaves it on its machine and at its position (count of operations before it). */
  readonly pins?: readonly {
    readonly operation: string;
    readonly machine: string;
    readonly position: number;
  }[];
  /** Per machine, the operations that stay, in this order, at the front of its queue. */
  readonly frozen?: Readonly<Record<string, readonly string[]>>;
  readonly crew?: readonly CrewInterval[] | null;
  /**
   * Of things held, the attributes that each is part of. Work that has to fetch one from another machine pays at least the
   * usual seconds of these, also where its machine stands as it asks; work of no seconds fetches nothing.
   */
  readonly partOf?: Readonly<Record<string, readonly string[]>>;
  /** Ends in the plan as it is, by job id, for the stability term. */
  readonly reference?: Readonly<Record<string, number>>;
}

/** Per machine id, operation ids in order. */
export type Queues = Readonly<Record<string, readonly string[]>>;

export interface ScheduledOperation {
  readonly job: string;
  /** Position in the job's routing, from 0. */
  readonly index: number;
  readonly operation: string;
  readonly machine: string;
  /** Equal to `start` when no changeover is needed. */
  readonly changeoverStart: number;
  readonly changeoverSeconds: number;
  readonly start: number;
  readonly end: number;
}

export interface Terms {
  readonly weightedTardiness: number;
  readonly changeover: number;
  readonly makespan: number;
  readonly flowTime: number;
  readonly stability: number;
}

export interface Schedule {
  readonly queues: Queues;
  /** In queue order per machine, on one without limit in the order of time; machines in problem order. */
  readonly operations: readonly ScheduledOperation[];
  /** Per job id, the end of its last operation. */
  readonly ends: Readonly<Record<string, number>>;
  readonly terms: Terms;
  readonly objective: number;
}

/** A machine by number (core/schedule/tracks.ts). */
export interface Track {
  readonly machine: MachineInput;
  /** The one operation that it is there for; null: any that the machine can do. */
  readonly only: number | null;
}

/**
 * A validated problem compiled for speed; only `buildProblem` makes one. Operations are numbered job by job in routing
 * order, jobs and machines in the order of the input. Nothing in it is ever changed.
 */
export interface Problem {
  readonly input: ProblemInput;
  /** How many machines are numbered: those of `tracks`. */
  readonly machines: number;
  /** The machines by number, in the order of the input; one without limit stands there once for each operation that may go to it. */
  readonly tracks: readonly Track[];
  readonly jobs: number;
  readonly operations: number;
  /** The numbers of each machine of the input. */
  readonly machineAt: ReadonlyMap<string, readonly number[]>;
  readonly jobAt: ReadonlyMap<string, number>;
  readonly operationAt: ReadonlyMap<string, number>;
  readonly operationIds: readonly string[];
  /** Job of each operation. */
  readonly jobOf: Int32Array;
  /** First operation of each job; one entry more than jobs, so that `firstOf[j + 1]` ends job j. */
  readonly firstOf: Int32Array;
  /** Work seconds of operation o on machine m at [o × machines + m]; −1 where m cannot do it. */
  readonly seconds: Int32Array;
  /** Machines that can do each operation, ascending. */
  readonly eligible: readonly Int32Array[];
  readonly open: readonly WorkingTime[];
  readonly setups: readonly SetupTable[];
  /** State of each machine before its first operation, a state of its setup table. */
  readonly initialState: Int32Array;
  /** Per machine, not before this instant: the later of `now` and `availableFrom`. */
  readonly availableFrom: Float64Array;
  /** Per job, the later of its release and `now`. */
  readonly release: Float64Array;
  /** Per job; Infinity when it is never tardy. */
  readonly due: Float64Array;
  readonly weight: Float64Array;
  /** Per job, its end in the plan as it is; NaN when it is not in it. */
  readonly reference: Float64Array;
  /** Per operation. */
  readonly transferShare: Float64Array;
  readonly crew: Int32Array;
  /** Things held by operation o on machine m at [o × machines + m]; null when no two machines share any (`heldTable`). */
  readonly held: readonly (readonly number[])[] | null;
  /** Per thing held, the attributes that it is part of; none where fetching it costs nothing. */
  readonly heldPartOf: readonly (readonly string[])[];
  /** Instant at which an operation was started; NaN when it was not. */
  readonly startedAt: Float64Array;
  /** Per machine, the operations that stay at the front of its queue: started, then frozen. */
  readonly front: readonly Int32Array[];
  /** Per machine, pins outside the front by ascending position. */
  readonly pins: readonly (readonly { readonly operation: number; readonly position: number }[])[];
  /** 1 for operations in a front or pinned: the search leaves them. */
  readonly fixed: Uint8Array;
  /**
   * Machines in such an order that every routing only goes forward in it; null when routings cross.
   * Where it exists, any queues can be carried out, and they can be timed one machine after another.
   */
  readonly machineOrder: Int32Array | null;
}
