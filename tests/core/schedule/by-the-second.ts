import type { MachineInput, OperationInput, ProblemInput } from '../../../core/schedule/problem.ts';
import type { Attributes } from '../../../core/schedule/changeover.ts';
import { changeoverSeconds } from './changeover-by-rule.ts';

/** Seconds looked up in a table; later ones are searched for in the open hours. */
const TABLE = 4096;

interface Step extends OperationInput {
  readonly job: number;
  readonly before: Step | null;
  readonly number: number;
  readonly own: readonly number[];
}

/** What an operation needs on a machine in some state, and the state it leaves; a state is written as JSON. */
interface Setup {
  readonly seconds: number;
  readonly after: string;
}

/**
 * A shop worked off by counting seconds one by one, straight from the problem as given. It shares no code with the
 * decoder, so that one can be held against the other. Operations and machines are numbered as they are listed.
 */
export class ShopBySecond {
  readonly steps: readonly Step[];
  readonly input: ProblemInput;
  readonly #origin: number;
  readonly #open: readonly Uint8Array[];
  readonly #start: Float64Array;
  readonly #end: Float64Array;
  readonly #machine: Int32Array;
  /** Per thing, the machines that hold it in each second: one, but for what has started. */
  readonly #holders = new Map<string, Map<number, Set<number>>>();
  /** By machine, state and operation, looked up again and again. */
  readonly #setups = new Map<string, Setup>();

  constructor(input: ProblemInput) {
    const steps: Step[] = [];
    input.jobs.forEach((job, j) =>
      job.operations.forEach((operation, k) => {
        const own = input.machines.map((machine) => secondsOn(operation, machine));
        const before = k === 0 ? null : steps.at(-1)!;
        steps.push({ ...operation, job: j, before, number: steps.length, own });
      }),
    );
    this.input = input;
    this.steps = steps;
    this.#origin = Math.min(input.now, ...steps.map((step) => step.started?.at ?? input.now));
    this.#open = input.machines.map((machine) =>
      Uint8Array.from({ length: TABLE }, (_, t) => Number(isOpen(machine, this.#origin + t))),
    );
    this.#start = new Float64Array(steps.length);
    this.#end = new Float64Array(steps.length);
    this.#machine = new Int32Array(steps.length);
  }

  /** The objective when the machines work these queues off; null when they wait for each other. */
  objective(queues: readonly (readonly number[])[]): number | null {
    const { input, steps } = this;
    const busy = new Map<number, number>();
    this.#holders.clear();
    const shared =
      input.crew?.length || steps.some((step) => input.machines.some(({ id }) => thingsOn(step, id).length));
    const heads = queues.map(() => 0);
    const states = input.machines.map((machine) => JSON.stringify(machine.initial ?? {}));
    const free = input.machines.map((machine) => Math.max(input.now, machine.availableFrom ?? input.now));
    let changeovers = 0;
    this.#end.fill(NaN);
    for (let placed = 0; placed < steps.length; placed++) {
      const [m, step] = this.#next(queues, heads, states, free, Boolean(shared)) ?? [];
      if (m === undefined || step === undefined) return null;
      const setup = this.#setup(m, states[m]!, step);
      let changeover = step.started ? 0 : setup.seconds;
      this.#time(step, m, free[m]!, changeover);
      if (shared) {
        let from = this.#seat(step, m, changeover, busy);
        for (let more; (more = this.#fetching(step, m, states[m]!, from)) > changeover; changeover = more) {
          this.#time(step, m, free[m]!, more);
          from = this.#seat(step, m, more, busy);
        }
        this.#take(step, m, from, busy);
        this.#keep(step, m, states[m]!, from);
      }
      changeovers += changeover;
      states[m] = setup.after;
      if (!input.machines[m]!.unlimited) free[m] = Math.max(free[m]!, this.#end[step.number]!);
      heads[m]! += 1;
    }
    return this.#weigh(changeovers);
  }

  /** What a machine may place next: the head of its queue; without limit, whatever of it is not placed yet. */
  #heads(m: number, queue: readonly number[], head: number): readonly Step[] {
    const unplaced = queue.filter((o) => Number.isNaN(this.#end[o]!));
    return (this.input.machines[m]!.unlimited ? unplaced : queue.slice(head, head + 1)).map(
      (o) => this.steps[o]!,
    );
  }

  /** The machine and its operation to place next; the people's rule: what has started, then what could start first. */
  #next(
    queues: readonly (readonly number[])[],
    heads: readonly number[],
    states: readonly string[],
    free: readonly number[],
    byStart: boolean,
  ): readonly [number, Step] | null {
    let chosen: readonly [number, Step] | null = null;
    let first = Infinity;
    for (let m = 0; m < queues.length; m++)
      for (const step of this.#heads(m, queues[m]!, heads[m]!)) {
        if (step.before !== null && Number.isNaN(this.#end[step.before.number]!)) continue;
        if (!byStart || step.started) return [m, step];
        this.#time(step, m, free[m]!, this.#setup(m, states[m]!, step).seconds);
        const start = this.#start[step.number]!;
        this.#end[step.number] = NaN;
        if (start < first) [chosen, first] = [[m, step], start];
      }
    return chosen;
  }

  #time(step: Step, m: number, free: number, changeover: number): void {
    const o = step.number;
    const before = step.before;
    const share = before?.transferShare ?? 1;
    const lots = before !== null && share < 1;
    const lastLot = lots
      ? this.#count(m, this.#end[before.number]!, Math.ceil(share * step.own[m]!))
      : -Infinity;
    this.#machine[o] = m;
    if (step.started) {
      this.#start[o] = step.started.at;
      this.#end[o] = Math.max(this.#count(m, step.started.at, step.own[m]!), this.input.now, lastLot);
      return;
    }
    let ready = Math.max(this.input.jobs[step.job]!.release, this.input.now);
    if (before !== null) {
      const home = this.#machine[before.number]!;
      const passedOn = lots
        ? this.#count(home, this.#start[before.number]!, Math.ceil(share * before.own[home]!))
        : this.#end[before.number]!;
      ready = Math.max(ready, passedOn);
    }
    let start = Math.max(ready, this.#count(m, free, changeover));
    while (!this.#isOpen(m, start)) start += 1;
    this.#start[o] = start;
    this.#end[o] = Math.max(this.#count(m, start, step.own[m]!), lastLot);
  }

  /**
   * Delays an operation, second by second, until its people and what it holds are there for all of its changeover and work.
   * @returns when the changeover begins
   */
  #seat(step: Step, m: number, changeover: number, busy: ReadonlyMap<number, number>): number {
    const o = step.number;
    const needed = step.crew ?? 1;
    const lastLot = this.#end[o]! > this.#count(m, this.#start[o]!, step.own[m]!) ? this.#end[o]! : -Infinity;
    const things = thingsOn(step, this.input.machines[m]!.id);
    const begins = () => {
      let from = this.#start[o]!;
      for (let left = changeover; left > 0;) if (this.#isOpen(m, --from)) left -= 1;
      return from;
    };
    const limit = (t: number) => this.input.crew?.find((c) => c.start <= t && t < c.end)?.people ?? Infinity;
    const short = (t: number) => needed > 0 && this.#isOpen(m, t) && (busy.get(t) ?? 0) + needed > limit(t);
    const away = (t: number) =>
      things.some((thing) => [...(this.#holders.get(thing)?.get(t) ?? [])].some((holder) => holder !== m));
    while (!step.started && secondsOf(begins(), this.#end[o]!).some((t) => short(t) || away(t))) {
      do this.#start[o]! += 1;
      while (!this.#isOpen(m, this.#start[o]!));
      this.#end[o] = Math.max(this.#count(m, this.#start[o]!, step.own[m]!), lastLot);
    }
    return begins();
  }

  #take(step: Step, m: number, from: number, busy: Map<number, number>): void {
    for (const t of secondsOf(from, this.#end[step.number]!)) {
      if (this.#isOpen(m, t)) busy.set(t, (busy.get(t) ?? 0) + (step.crew ?? 1));
      if (t >= this.input.now)
        for (const thing of thingsOn(step, this.input.machines[m]!.id)) this.#hold(thing, t, m);
    }
  }

  #hold(thing: string, t: number, m: number): void {
    if (!this.#holders.has(thing)) this.#holders.set(thing, new Map());
    const seconds = this.#holders.get(thing)!;
    seconds.set(t, (seconds.get(t) ?? new Set()).add(m));
  }

  /** The last second before `from` in which anybody held a thing; −∞ if nobody had. */
  #lastHeld(thing: string, from: number): number {
    return Math.max(...[...(this.#holders.get(thing)?.keys() ?? [])].filter((t) => t < from));
  }

  /** Seconds of a changeover begun at `from`, with what was last held elsewhere fetched for it. */
  #fetching(step: Step, m: number, state: string, from: number): number {
    if (step.started || step.own[m] === 0) return 0;
    const away = thingsOn(step, this.input.machines[m]!.id).filter((thing) => {
      const last = this.#holders.get(thing)?.get(this.#lastHeld(thing, from));
      return last !== undefined && !last.has(m);
    });
    return this.#changeover(step, m, state, away);
  }

  /** What stands ready, and would cost more if it had to be fetched, nobody takes away before it is used. */
  #keep(step: Step, m: number, state: string, from: number): void {
    if (step.started || step.own[m] === 0) return;
    for (const thing of thingsOn(step, this.input.machines[m]!.id)) {
      const last = this.#lastHeld(thing, from);
      if (last !== -Infinity && !this.#holders.get(thing)!.get(last)!.has(m)) continue;
      if (this.#changeover(step, m, state, [thing]) > this.#changeover(step, m, state, []))
        for (const t of secondsOf(Math.max(last, this.input.now), from)) this.#hold(thing, t, m);
    }
  }

  #changeover(step: Step, m: number, state: string, fetched: readonly string[]): number {
    const parts = fetched.flatMap((thing) => this.input.partOf?.[thing] ?? []);
    const { changeover } = this.input.machines[m]!;
    return changeoverSeconds(changeover, JSON.parse(state) as Attributes, step.attributes ?? {}, parts);
  }

  /** The instant at which so many open seconds have gone by. */
  #count(m: number, from: number, seconds: number): number {
    let t = from;
    for (let left = seconds; left > 0; t++) if (this.#isOpen(m, t)) left -= 1;
    return t;
  }

  #isOpen(m: number, t: number): boolean {
    const k = t - this.#origin;
    return k >= 0 && k < TABLE ? this.#open[m]![k] === 1 : isOpen(this.input.machines[m]!, t);
  }

  #setup(m: number, state: string, step: Step): Setup {
    const key = `${m} ${step.number} ${state}`;
    const known = this.#setups.get(key);
    if (known !== undefined) return known;
    const from = JSON.parse(state) as Attributes;
    const asked = step.attributes ?? {};
    const seconds = changeoverSeconds(this.input.machines[m]!.changeover, from, asked);
    const setup = { seconds, after: JSON.stringify({ ...from, ...asked }) };
    this.#setups.set(key, setup);
    return setup;
  }

  #weigh(changeovers: number): number {
    const { objective, jobs, reference, now } = this.input;
    let total = objective.changeover * changeovers;
    let latest = now;
    for (const step of this.steps) {
      if (this.steps[step.number + 1]?.job === step.job) continue;
      const job = jobs[step.job]!;
      const end = this.#end[step.number]!;
      const wanted = reference?.[job.id];
      if (job.due !== null && end > job.due)
        total += objective.weightedTardiness * job.weight * (end - job.due);
      total += objective.flowTime * (end - job.release);
      if (wanted !== undefined) total += objective.stability * Math.abs(end - wanted);
      latest = Math.max(latest, end);
    }
    return total + objective.makespan * (latest - now);
  }
}

const secondsOf = (from: number, to: number): number[] =>
  Array.from({ length: Math.max(0, to - from) }, (_, k) => from + k);

/** What an operation holds on a machine, everywhere and there besides. */
const thingsOn = (operation: OperationInput, machine: string): readonly string[] => [
  ...(operation.holds ?? []),
  ...(operation.machines?.find(({ id }) => id === machine)?.holds ?? []),
];

const isOpen = (machine: MachineInput, t: number) =>
  machine.open === null || machine.open.some(({ start, end }) => start <= t && t < end);

/** Seconds of the operation there; −1 where it cannot be done. */
function secondsOn(operation: OperationInput, machine: MachineInput): number {
  if (operation.machines === undefined) return operation.stage === machine.stage ? operation.seconds : -1;
  const named = operation.machines.find((each) => each.id === machine.id);
  return named === undefined ? -1 : (named.seconds ?? operation.seconds);
}
