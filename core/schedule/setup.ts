import type { Attributes, Changeover } from './changeover.ts';

/** One attribute a changeover depends on, its values numbered from 1; 0 stands for "none known". */
interface Axis {
  readonly name: string;
  readonly values: Map<string, number>;
  /** Seconds where nothing else is said. */
  readonly usual: number;
  readonly cost: (from: number, to: number) => number;
  /** Costs by the value changed from, then the one changed to, as far as they were asked for. */
  readonly known: (Int32Array | undefined)[];
}

/**
 * Changeover seconds between setups. A machine's state is the last value of each attribute; an operation's class is the
 * values it asks for. An attribute that the state or the operation lacks costs nothing, and one that the operation
 * lacks stays as it was. States and classes are numbered as they are met, so that the search only reads small tables.
 */
export class SetupTable {
  /** Per operation its class (classes come first among the states, with the same number); −1: never on this machine. */
  readonly classOf: Int32Array;
  /** Seconds by state, then class; the row of a state that was never evaluated is filled by `row`. */
  readonly seconds: (Int32Array | undefined)[] = [];
  /** True when every operation names every attribute: then the state after an operation is its class. */
  readonly complete: boolean;
  /** True when nothing ever needs a changeover. */
  readonly free: boolean;
  readonly #axes: readonly Axis[];
  readonly #sum: boolean;
  readonly #states: Int32Array[] = [];
  readonly #numbers = new Map<string, number>();
  readonly #classes: number;
  readonly #after: (Int32Array | undefined)[] = [];

  /**
   * @param asked what every operation of the problem asks for; null for those that never come here.
   *   Validated before: `pairs` knows every value
   */
  constructor(changeover: Changeover | null, asked: readonly (Attributes | null)[]) {
    this.#sum = changeover?.combine !== 'max';
    this.#axes = changeover === null ? [] : axesOf(changeover);
    this.classOf = Int32Array.from(asked, (attributes) =>
      attributes === null ? -1 : this.state(attributes),
    );
    this.free = this.#axes.length === 0;
    this.#classes = this.#states.length;
    this.complete = this.#states.every((state) => !state.includes(0));
  }

  /** The number of a state given by its attributes. */
  state(attributes: Attributes | null): number {
    return this.#number(Int32Array.from(this.#axes, (axis) => valueOf(axis, attributes?.[axis.name])));
  }

  /** Seconds from `state` to every class. */
  row(state: number): Int32Array {
    const known = this.seconds[state];
    if (known !== undefined) return known;
    const from = this.#states[state]!;
    const costs = this.#axes.map((axis, k) => costsFrom(axis, from[k]!));
    const row = new Int32Array(this.#classes);
    for (let kind = 0; kind < row.length; kind++) row[kind] = this.#combined(costs, this.#states[kind]!);
    this.seconds[state] = row;
    return row;
  }

  /** The state after an operation of class `to` ran in `state`. */
  after(state: number, to: number): number {
    if (this.complete) return to;
    const row = (this.#after[state] ??= new Int32Array(this.#classes).fill(-1));
    if (row[to] === -1) {
      const asked = this.#states[to]!;
      row[to] = this.#number(this.#states[state]!.map((value, axis) => asked[axis]! || value));
    }
    return row[to]!;
  }

  /** Seconds from `state` to class `to` when parts of these attributes are fetched: each costs at least its usual figure. */
  fetching(state: number, to: number, attributes: ReadonlySet<string>): number {
    const asked = this.#states[to]!;
    const costs = this.#axes.map((axis, k) => {
      const change = costsFrom(axis, this.#states[state]![k]!)[asked[k]!]!;
      return asked[k]! > 0 && attributes.has(axis.name) ? Math.max(change, axis.usual) : change;
    });
    return this.#sum ? costs.reduce((a, b) => a + b, 0) : Math.max(0, ...costs);
  }

  #combined(costs: readonly Int32Array[], to: Int32Array): number {
    let total = 0;
    for (let k = 0; k < to.length; k++) {
      const seconds = costs[k]![to[k]!]!;
      total = this.#sum ? total + seconds : Math.max(total, seconds);
    }
    return total;
  }

  #number(state: Int32Array): number {
    const key = state.join();
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    this.#numbers.set(key, this.#states.length);
    this.#states.push(state);
    return this.#states.length - 1;
  }
}

function valueOf(axis: Axis, value: string | undefined): number {
  if (value === undefined) return 0;
  if (!axis.values.has(value)) axis.values.set(value, axis.values.size + 1);
  return axis.values.get(value)!;
}

/** Seconds to change from one value to each that operations ask for; nothing to "none". */
function costsFrom(axis: Axis, from: number): Int32Array {
  return (axis.known[from] ??= Int32Array.from({ length: axis.values.size + 1 }, (_, to) =>
    to === 0 ? 0 : axis.cost(from, to),
  ));
}

function axesOf(changeover: Changeover): Axis[] {
  const { pairs, exceptions = [] } = changeover;
  const names = new Set([...Object.keys(changeover.attributes), ...exceptions.map((e) => e.attribute)]);
  if (pairs !== undefined) names.delete(pairs.attribute);
  const matters = (name: string) =>
    changeover.attributes[name] || exceptions.some((e) => e.attribute === name && e.seconds > 0);
  const axes = [...names]
    .filter(matters)
    .sort()
    .map((name): Axis => {
      const values = new Map<string, number>();
      const usual = changeover.attributes[name] ?? 0;
      const unusual = new Map<number, Map<number, number>>();
      const cost = (from: number, to: number) =>
        unusual.get(from)?.get(to) ?? (from === 0 || from === to ? 0 : usual);
      const axis: Axis = { name, values, usual, cost, known: [] };
      for (const e of exceptions.filter((e) => e.attribute === name)) {
        const from = valueOf(axis, e.from);
        if (!unusual.has(from)) unusual.set(from, new Map());
        unusual.get(from)!.set(valueOf(axis, e.to), e.seconds);
      }
      return axis;
    });
  if (pairs !== undefined) {
    const cost = (from: number, to: number) =>
      from === 0 ? (pairs.initial?.[to - 1] ?? 0) : pairs.seconds[from - 1]![to - 1]!;
    axes.push({
      name: pairs.attribute,
      values: new Map(pairs.values.map((v, k) => [v, k + 1])),
      usual: changeover.attributes[pairs.attribute] ?? 0,
      cost,
      known: [],
    });
  }
  return axes;
}
