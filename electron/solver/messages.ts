import type { Why } from '../../core/planning/answers.ts';
import type { PromiseAnswer } from '../../core/contract/ask.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import type { RunInput } from '../../core/cutting/run.ts';
import type { Joins } from '../../core/planning/join-search.ts';
import type { ProblemInput, Queues, Terms } from '../../core/schedule/problem.ts';
import type { Repair } from '../../core/schedule/repair.ts';
import type { RushWay } from '../../core/schedule/rush/way.ts';
import type { OrderLine, WorkOrder } from '../../core/shop/order.ts';
import type { OperationRecord } from '../../core/shop/plan.ts';
import type { Shop } from '../../core/shop/state.ts';
import type { Dues } from '../service/pulled-in.ts';

/** Host → solver. Every message names its run; a stale one is ignored. */
export type ToSolver =
  | {
      readonly kind: 'start';
      readonly jobId: string;
      readonly problem: ProblemInput;
      /** The plan as it stands: the search never returns a worse one. */
      readonly queues: Queues;
      readonly seed: number;
      readonly budgetMs: number;
    }
  | AskSolver
  | CutSolver
  | JoinSolver
  | QuestionSolver
  | { readonly kind: 'stop'; readonly jobId: string };

/** A longer question: everything re-planned around rush lines, or the repair after a breakdown. */
export interface AskSolver {
  readonly kind: 'ask';
  readonly jobId: string;
  readonly problem: ProblemInput;
  readonly queues: Queues;
  readonly seed: number;
  readonly budgetMs: number;
  readonly about:
    | { readonly kind: 'rush'; readonly jobs: readonly string[] }
    | { readonly kind: 'repair'; readonly machines: readonly string[] };
}

/** Why a line ends when it does; dates for an order as typed; due dates pulled in to be sure of them. */
export type Question =
  | { readonly kind: 'why'; readonly lineId: string }
  | { readonly kind: 'promise'; readonly order: WorkOrder; readonly lines: readonly OrderLine[] }
  | { readonly kind: 'protect'; readonly confidence: number; readonly records: readonly OperationRecord[] };

export type AnswerTo<Q extends Question> = {
  readonly why: Why;
  readonly promise: PromiseAnswer;
  readonly protect: Dues;
}[Q['kind']];

/** A question about the shop that one reckoning answers. */
export interface QuestionSolver {
  readonly kind: 'question';
  readonly jobId: string;
  readonly shop: Shop;
  readonly now: number;
  readonly about: Question;
}

export interface Replied {
  readonly kind: 'replied';
  readonly jobId: string;
  /** The answer, or the sentence with which it is refused. */
  readonly reply:
    | { readonly ok: true; readonly answer: AnswerTo<Question> }
    | { readonly ok: false; readonly message: string };
}

/** One run on the shear to be cut. */
export interface CutSolver {
  readonly kind: 'cut';
  readonly jobId: string;
  readonly input: RunInput;
  readonly budgetMs: number;
}

/** A plan whose runs may be joined to save stock. */
export interface JoinSolver {
  readonly kind: 'join';
  readonly jobId: string;
  readonly shop: Shop;
  readonly now: number;
  readonly queues: Queues;
  readonly budgetMs: number;
}

export interface Joined {
  readonly kind: 'joined';
  readonly jobId: string;
  /** Null when the plan cannot be timed any more. */
  readonly joins: Joins | null;
}

/** The best sheets so far. */
export interface Cut {
  readonly kind: 'cutting' | 'cut';
  readonly jobId: string;
  readonly seconds: number;
  /** Null when nothing is new since the last message. */
  readonly plan: CutPlan | null;
}

/** The best answer so far to a longer question. */
export interface Found {
  readonly kind: 'found' | 'answered';
  readonly jobId: string;
  readonly seconds: number;
  /** Null when no better one was found since the last message, and where the question is about the other. */
  readonly way: RushWay | null;
  readonly repair: Repair | null;
}

/** The best plan so far and what it is worth. */
export interface Best {
  readonly queues: Queues;
  readonly objective: number;
  readonly terms: Terms;
}

/** Solver → host. */
export type FromSolver =
  | {
      readonly kind: 'progress' | 'done';
      readonly jobId: string;
      readonly seconds: number;
      readonly step: number;
      readonly evaluations: number;
      readonly bound: number | null;
      /** Null when no better one was found since the last message. */
      readonly best: Best | null;
    }
  | Found
  | Cut
  | Joined
  | Replied
  | { readonly kind: 'failed'; readonly jobId: string; readonly message: string };
