import type { MachineInput, OperationInput, ProblemInput } from '../../../core/schedule/problem.ts';
import type { Attributes, Changeover } from '../../../core/schedule/changeover.ts';

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
  /** Per thing, the machine that holds it in each second. */
  readonly #holders = new Map<string, Map<number, number>>();
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
      const changeover = step.started ? 0 : setup.seconds;
      this.#time(step, m, free[m]!, changeover);
      if (shared) this.#seat(step, m, changeover, busy);
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

  /** Delays an operation, second by second, until its people and what it holds are there for all of its changeover and work. */
  #seat(step: Step, m: number, changeover: number, busy: Map<number, number>): void {
    const o = step.number;
    const needed = step.crew ?? 1;
    const lastLot = this.#end[o]! > this.#count(m, this.#start[o]!, step.own[m]!) ? this.#end[o]! : -Infinity;
    const things = thingsOn(step, this.input.machines[m]!.id);
    const seconds = () => {
      let from = this.#start[o]!;
      for (let left = changeover; left > 0;) if (this.#isOpen(m, --from)) left -= 1;
      const all: number[] = [];
      for (let t = from; t < this.#end[o]!; t++) all.push(t);
      return all;
    };
    const limit = (t: number) => this.input.crew?.find((c) => c.start <= t && t < c.end)?.people ?? Infinity;
    const short = (t: number) => needed > 0 && this.#isOpen(m, t) && (busy.get(t) ?? 0) + needed > limit(t);
    const away = (t: number) => things.some((thing) => (this.#holders.get(thing)?.get(t) ?? m) !== m);
    let taken = seconds();
    while (!step.started && taken.some((t) => short(t) || away(t))) {
      do this.#start[o]! += 1;
      while (!this.#isOpen(m, this.#start[o]!));
      this.#end[o] = Math.max(this.#count(m, this.#start[o]!, step.own[m]!), lastLot);
      taken = seconds();
    }
    for (const t of taken) {
      if (this.#isOpen(m, t)) busy.set(t, (busy.get(t) ?? 0) + needed);
      if (t >= this.input.now) this.#hold(things, t, m);
    }
  }

  #hold(things: readonly string[], t: number, m: number): void {
    for (const thing of things) {
      if (!this.#holders.has(thing)) this.#holders.set(thing, new Map());
      this.#holders.get(thing)!.set(t, m);
    }
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

/** The rule as the problem states it, attribute by attribute. */
function changeoverSeconds(rules: Changeover | null, from: Attributes, to: Attributes): number {
  let sum = 0;
  let largest = 0;
  for (const [attribute, value] of Object.entries(to)) {
    const was = from[attribute];
    const { pairs } = rules ?? {};
    let seconds = 0;
    if (pairs?.attribute === attribute) {
      const [row, column] = [pairs.values.indexOf(was ?? ''), pairs.values.indexOf(value)];
      seconds = was === undefined ? (pairs.initial?.[column] ?? 0) : pairs.seconds[row]![column]!;
    } else if (was !== undefined && was !== value) {
      const exception = rules?.exceptions?.find(
        (e) => e.attribute === attribute && e.from === was && e.to === value,
      );
      seconds = exception?.seconds ?? rules?.attributes[attribute] ?? 0;
    }
    sum += seconds;
    largest = Math.max(largest, seconds);
  }
  return rules?.combine === 'max' ? largest : sum;
}
