import type { PromiseAnswer } from '../../core/contract/ask.ts';
import type { CutAnswer } from '../../core/cutting/answer.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import type { RunInput } from '../../core/cutting/run.ts';
import type { RepairPlans, RushWay, Why } from '../../core/planning/answers.ts';
import type { Joins } from '../../core/planning/join-search.ts';
import type { ProblemInput, Queues } from '../../core/schedule/problem.ts';
import type { OrderLine, WorkOrder } from '../../core/shop/order.ts';
import type { OperationRecord } from '../../core/shop/plan.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Dues } from '../../core/learn/pulled-in.ts';

/** A plan to begin from: what is found is never worse. */
interface FromPlan {
  readonly problem: ProblemInput;
  readonly queues: Queues;
  readonly seed: number;
}

interface OfShop {
  readonly shop: Shop;
  readonly now: number;
}

/** What a solver process can be asked to work out. */
export type Task =
  | ({ readonly kind: 'search' } & FromPlan)
  /** Everything planned again around rush lines. */
  | ({
      readonly kind: 'rush';
      readonly jobs: readonly string[];
      /** The problem as it is without the rush. */
      readonly asPlanned: ProblemInput;
    } & FromPlan)
  /** Few moves, and the best plan, after hours out of service. */
  | ({ readonly kind: 'repair'; readonly machines: readonly string[]; readonly most: number } & FromPlan)
  /** One run on the shear. */
  | { readonly kind: 'cut'; readonly input: RunInput }
  /** All runs of the plan that are not proven best, one after the other. */
  | ({ readonly kind: 'cutAll'; readonly known: readonly CutAnswer[]; readonly secondsEach: number } & OfShop)
  /** Runs of a plan joined where that saves stock. */
  | ({ readonly kind: 'join'; readonly queues: Queues } & OfShop)
  | Question;

/** What is answered once: why a line ends when it does, dates for an order as typed, due dates pulled in to be sure of them. */
export type Question =
  | ({ readonly kind: 'why'; readonly lineId: string } & OfShop)
  | ({ readonly kind: 'promise'; readonly order: WorkOrder; readonly lines: readonly OrderLine[] } & OfShop)
  | ({
      readonly kind: 'protect';
      readonly confidence: number;
      readonly records: readonly OperationRecord[];
    } & OfShop);

export type TaskKind = Task['kind'];
export type TaskOf<K extends TaskKind> = Extract<Task, { kind: K }>;

/** A plan and what it is worth. */
export interface Plan {
  readonly queues: Queues;
  readonly objective: number;
}

export interface CutAll {
  /** What was worked on, in this order. */
  readonly answers: readonly CutAnswer[];
  /** The keys of all runs of the plan, and how many of them are still to be worked on. */
  readonly keys: readonly string[];
  readonly left: number;
}

/** What is found for each kind of task; the best so far while the work goes on. */
interface Findings {
  readonly search: Plan;
  readonly rush: RushWay;
  readonly repair: RepairPlans;
  readonly cut: CutPlan;
  readonly cutAll: CutAll;
  readonly join: Joins;
  readonly why: Why;
  readonly promise: PromiseAnswer;
  readonly protect: Dues;
}
export type BestOf<K extends TaskKind> = Findings[K];

/** How far a search has come. */
export interface Counts {
  readonly step: number;
  readonly evaluations: number;
  readonly bound: number | null;
}

/** The best so far. */
export interface Found<K extends TaskKind = TaskKind> {
  /** On its way to the host null when nothing better was found since the last message. */
  readonly best: BestOf<K> | null;
  /** Null where the work is not counted. */
  readonly counts: Counts | null;
}

/** The work of one process. */
export interface Start<K extends TaskKind = TaskKind> {
  readonly kind: 'start';
  readonly jobId: string;
  readonly task: TaskOf<K>;
  readonly budgetMs: number;
}

/** Host → solver. Every message names its job; a stale one is ignored. */
export type ToSolver = Start | { readonly kind: 'stop'; readonly jobId: string };

/** Solver → host. `done` is the last of a job; so is `refused`, a sentence for the user, and `failed`, a bug for the log. */
export type FromSolver =
  | ({ readonly kind: 'progress' | 'done'; readonly jobId: string } & Found)
  | { readonly kind: 'refused' | 'failed'; readonly jobId: string; readonly message: string };
