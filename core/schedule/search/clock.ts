import type { WorkingTime } from '../working-time.ts';

/** Runs along a machine's open hours: the instant reached, and the open interval that holds it. */
export class Clock {
  now = 0;
  interval = 0;
  #opens: Float64Array = new Float64Array(0);
  #closes: Float64Array = new Float64Array(0);

  /** @param interval one that does not begin after the one that holds the instant */
  set({ start, end }: WorkingTime, now: number, interval: number): void {
    this.#opens = start;
    this.#closes = end;
    this.interval = interval;
    this.now = now;
    this.#catchUp();
  }

  /** Works so many seconds, pausing while closed. */
  work(seconds: number): void {
    const closes = this.#closes;
    let now = this.now;
    let left = seconds;
    if (this.#opens[this.interval]! > now) now = this.#opens[this.interval]!;
    for (; left > closes[this.interval]! - now; now = this.#opens[++this.interval]!)
      left -= closes[this.interval]! - now;
    this.now = now + left;
  }

  /** Waits until an instant has come and the machine is open. */
  open(instant: number): void {
    if (instant > this.now) this.now = instant;
    while (this.#closes[this.interval]! <= this.now) this.interval += 1;
    if (this.#opens[this.interval]! > this.now) this.now = this.#opens[this.interval]!;
  }

  /** Lets time pass until an instant, open or not. */
  pass(instant: number): void {
    this.now = instant;
    this.#catchUp();
  }

  #catchUp(): void {
    while (this.#closes[this.interval]! < this.now) this.interval += 1;
  }
}
