import type { Reply } from '../../../core/contract/call.ts';
import type { DoorHost } from './host.ts';

/** How the host came through one case. */
export interface Verdict {
  readonly fault: 'crashed' | 'hung' | 'partial' | null;
  /** What was tried and what was seen, for whoever looks into a fault. */
  readonly what: string;
  /** The longest that anything in the case took. */
  readonly ms: number;
  /** Whether anything was accepted: a trial in which all is refused at once tries little. */
  readonly accepted: boolean;
}

/** What is slower hangs. */
export const HUNG_MS = 1000;

/** Watches what a case does with the host. */
export class Watch {
  ms = 0;
  #accepted = false;
  #fault: Verdict['fault'] = null;
  readonly #what: string[] = [];

  note(what: string): void {
    this.#what.push(what.length > 300 ? `${what.slice(0, 300)}…` : what);
  }

  blame(fault: NonNullable<Verdict['fault']>, what: string): void {
    this.#fault ??= fault;
    this.note(`${fault.toUpperCase()}: ${what}`);
  }

  /** Does one thing and takes its time. What throws is a crash. */
  async timed<T>(what: string, work: () => T | Promise<T>): Promise<T | null> {
    const from = performance.now();
    try {
      return await work();
    } catch (error) {
      this.blame('crashed', `${what}: ${error instanceof Error ? error.stack : String(error)}`);
      return null;
    } finally {
      const took = performance.now() - from;
      this.ms = Math.max(this.ms, took);
      if (took > HUNG_MS) this.note(`${what} took ${took.toFixed(0)} ms`);
    }
  }

  /** A reply, timed. A bug in the host is a crash; so is a refusal that is no sentence. */
  async asked(what: string, ask: () => Promise<Reply<unknown> | null>): Promise<Reply<unknown> | null> {
    const reply = await this.timed(what, ask);
    this.#accepted ||= reply?.ok === true;
    if (reply && !reply.ok) {
      const { code, message } = reply.error;
      if (code === 'internal' || !/^.{8,1000}[.…)]$/su.test(message))
        this.blame('crashed', `${what}: ${message}`);
      this.note(`${what}: ${code}: ${message}`);
    }
    return reply;
  }

  /** After a case: the host still answers, and its memory says what the file says. */
  async end(host: DoorHost): Promise<Verdict> {
    const accepted = this.#accepted;
    const status = await this.asked('app.status', () => host.serve('app.status', {}));
    if (!status?.ok) this.blame('crashed', 'app.status is not answered');
    if (!(await this.timed('shop.read', () => host.agrees())))
      this.blame('partial', 'the shop in memory is not the one in the file');
    for (const line of host.logged.splice(0)) this.blame('crashed', `log: ${line}`);
    if (this.ms > HUNG_MS) this.blame('hung', `${this.ms.toFixed(0)} ms`);
    return { fault: this.#fault, what: this.#what.join('\n  '), ms: this.ms, accepted };
  }
}

type Content = ReturnType<DoorHost['content']>;

export const sameContent = (a: Content, b: Content): boolean => JSON.stringify(a) === JSON.stringify(b);
