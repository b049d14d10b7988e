/** A set of small whole numbers that is fast to walk through, in no particular order. */
export class SparseSet {
  /** Its members: the first `size` entries. */
  readonly members: Int32Array;
  size = 0;
  readonly #place: Int32Array;

  /** @param limit every member is below it */
  constructor(limit: number) {
    this.members = new Int32Array(limit);
    this.#place = new Int32Array(limit).fill(-1);
  }

  add(member: number): void {
    if (this.#place[member]! >= 0) return;
    this.#place[member] = this.size;
    this.members[this.size++] = member;
  }

  delete(member: number): void {
    const position = this.#place[member]!;
    if (position < 0) return;
    const last = this.members[--this.size]!;
    this.members[position] = last;
    this.#place[last] = position;
    this.#place[member] = -1;
  }
}
