/** A set of small whole numbers that is fast to walk through, in no particular order. */
export class Bag {
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
    const place = this.#place[member]!;
    if (place < 0) return;
    const last = this.members[--this.size]!;
    this.members[place] = last;
    this.#place[last] = place;
    this.#place[member] = -1;
  }
}
