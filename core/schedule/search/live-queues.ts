import type { Problem } from '../problem.ts';

/**
 * The queues while they are searched, as operation numbers. The one way to change them is `shift`; shifts since the last
 * `commit` can be taken back. Per machine it remembers which stretch changed, so that only that need be timed again.
 */
export class LiveQueues {
  readonly problem: Problem;
  readonly queues: Int32Array[];
  readonly lengths: Int32Array;
  /** Machine and position of each operation. */
  readonly machineOf: Int32Array;
  readonly positionOf: Int32Array;
  /** First changed position of each machine's queue; more than its length when nothing changed. */
  readonly from: Int32Array;
  /** Position from which on the queue is as before; the operation there may follow another than before. */
  readonly until: Int32Array;
  /** Shifts to take back, five numbers each, latest last. */
  #log: Int32Array;
  #logged = 0;
  #block = new Int32Array(16);

  constructor(problem: Problem, queues: readonly ArrayLike<number>[]) {
    const n = problem.operations;
    this.problem = problem;
    this.queues = queues.map(() => new Int32Array(n));
    this.lengths = new Int32Array(problem.machines);
    this.machineOf = new Int32Array(n);
    this.positionOf = new Int32Array(n);
    this.from = new Int32Array(problem.machines);
    this.until = new Int32Array(problem.machines);
    this.#log = new Int32Array(640);
    this.load(queues);
  }

  /** Replaces all queues. */
  load(queues: readonly ArrayLike<number>[]): void {
    queues.forEach((queue, m) => {
      this.lengths[m] = queue.length;
      this.queues[m]!.set(queue);
      this.#number(m, 0, queue.length);
    });
    this.commit();
  }

  /** Is a queue, or a ready time in it, changed since the last `commit`? */
  isTouched(m: number): boolean {
    return this.from[m]! <= this.lengths[m]!;
  }

  /** A copy of the queues. */
  copy(): Int32Array[] {
    return this.queues.map((queue, m) => queue.slice(0, this.lengths[m]));
  }

  /** Moves `count` operations from position i of machine m to begin at position j of machine n (counted without them). */
  shift(m: number, i: number, count: number, n: number, j: number): void {
    if (this.#logged + 5 > this.#log.length) {
      const longer = new Int32Array(2 * this.#log.length);
      longer.set(this.#log);
      this.#log = longer;
    }
    this.#log[this.#logged++] = m;
    this.#log[this.#logged++] = i;
    this.#log[this.#logged++] = count;
    this.#log[this.#logged++] = n;
    this.#log[this.#logged++] = j;
    this.#move(m, i, count, n, j);
    if (m === n) {
      this.#changed(m, Math.min(i, j), Math.max(i, j) + count);
      return;
    }
    if (this.until[m]! > i) this.until[m] = Math.max(i, this.until[m]! - count);
    this.#changed(m, i, i);
    if (this.until[n]! > j) this.until[n]! += count;
    this.#changed(n, j, j + count);
  }

  /** Puts pinned operations back at their positions on machines that changed. */
  restorePins(): void {
    for (let m = 0; m < this.problem.machines; m++) {
      const pins = this.problem.pins[m]!;
      if (pins.length === 0 || this.from[m]! > this.lengths[m]!) continue;
      if (pins.every((pin) => this.positionOf[pin.operation] === pin.position)) continue;
      const last = this.lengths[m]! - 1;
      for (const pin of pins) this.shift(m, this.positionOf[pin.operation]!, 1, m, last);
      for (const pin of pins)
        if (pin.position < this.positionOf[pin.operation]!)
          this.shift(m, this.positionOf[pin.operation]!, 1, m, pin.position);
    }
  }

  /** Makes the shifts since the last `commit` final. */
  commit(): void {
    this.#logged = 0;
    this.#unchanged();
  }

  /** Takes the shifts since the last `commit` back. */
  rollback(): void {
    while (this.#logged > 0) {
      this.#logged -= 5;
      const log = this.#log;
      const k = this.#logged;
      this.#move(log[k + 3]!, log[k + 4]!, log[k + 2]!, log[k]!, log[k + 1]!);
    }
    this.#unchanged();
  }

  #unchanged(): void {
    for (let m = 0; m < this.from.length; m++) {
      this.from[m] = 0x7fffffff;
      this.until[m] = 0;
    }
  }

  #changed(m: number, from: number, until: number): void {
    if (from < this.from[m]!) this.from[m] = from;
    if (until > this.until[m]!) this.until[m] = until;
  }

  #move(m: number, i: number, count: number, n: number, j: number): void {
    const source = this.queues[m]!;
    const target = this.queues[n]!;
    if (this.#block.length < count) this.#block = new Int32Array(2 * count);
    const block = this.#block;
    for (let k = 0; k < count; k++) block[k] = source[i + k]!;
    if (m === n) {
      if (j > i) for (let k = i; k < j; k++) source[k] = source[k + count]!;
      else for (let k = i + count - 1; k >= j + count; k--) source[k] = source[k - count]!;
      for (let k = 0; k < count; k++) source[j + k] = block[k]!;
      this.#number(m, Math.min(i, j), Math.max(i, j) + count);
      return;
    }
    const left = this.lengths[m]! - count;
    for (let k = i; k < left; k++) source[k] = source[k + count]!;
    this.lengths[m] = left;
    for (let k = this.lengths[n]! - 1; k >= j; k--) target[k + count] = target[k]!;
    for (let k = 0; k < count; k++) target[j + k] = block[k]!;
    this.lengths[n]! += count;
    this.#number(m, i, left);
    this.#number(n, j, this.lengths[n]!);
  }

  #number(m: number, from: number, until: number): void {
    const queue = this.queues[m]!;
    for (let k = from; k < until; k++) {
      const o = queue[k]!;
      this.positionOf[o] = k;
      this.machineOf[o] = m;
    }
  }
}
