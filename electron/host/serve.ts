import type { AnswerOf, CheckedInputOf, ErrorCode, Reply } from '../../core/contract/call.ts';
import { contract, type CallName, type Contract } from '../../core/contract/index.ts';
import { faultOf } from '../../core/input-limits.ts';
import type { Conflict } from '../../core/result.ts';
import type { Log } from '../log.ts';
import { Refused } from '../refused.ts';
import { unfit } from './unfit.ts';

/**
 * One handler a request, no transport: electron/host/answers.ts makes them. The caller is the name that a window or a
 * floor screen gives itself; its steps form its own line of undo.
 */
export type Answers = {
  readonly [K in CallName]: (
    input: CheckedInputOf<Contract[K]>,
    caller: string,
  ) => AnswerOf<Contract[K]> | Promise<AnswerOf<Contract[K]>>;
};

/** Answers one request by its wire name ("shop.read"). Never rejects. */
export type Serve = (name: string, input: unknown, caller?: unknown) => Promise<Reply<unknown>>;

/** A caller's name for itself: short, of plain letters. Anything else is nobody's. */
const callerOf = (raw: unknown): string =>
  typeof raw === 'string' && /^[\w .-]{1,40}$/.test(raw) ? raw : '';

export const refuse = (
  code: ErrorCode,
  message: string,
  conflicts: readonly Conflict[] = [],
): Reply<never> => ({
  ok: false,
  error: conflicts.length === 0 ? { code, message } : { code, message, conflicts },
});

/** Files that are sent along; their schemas limit them. */
const PACKED = { longTexts: ['base64', 'gzipBase64'] };

/** Every request by its wire name. */
export const requestNames: readonly string[] = Object.values(contract).map((call) => call.name);

/**
 * The one door: what comes in and what goes out is checked by the contract. Troubles of the user keep their code and
 * sentence; anything else is a bug, logged in full and told calmly.
 * @param kept how often something was written into the data file so far
 */
export function makeServe(answers: Answers, log: Log, kept: () => number): Serve {
  const byName = new Map(
    (Object.keys(contract) as CallName[]).map((key) => [
      contract[key].name,
      { call: contract[key], answer: answers[key] },
    ]),
  );
  return async (name, raw, caller) => {
    const found = byName.get(name);
    if (!found) return refuse('bad-input', `There is no request named “${name.slice(0, 60)}”.`);
    const fault = faultOf(raw, PACKED);
    if (fault) return refuse('bad-input', `The request was not carried out: ${fault}. Nothing was changed.`);
    const input = found.call.input.safeParse(raw);
    if (!input.success) return refuse('bad-input', unfit(input.error));
    const before = kept();
    try {
      const value = await (found.answer as (input: unknown, caller: string) => unknown)(
        input.data,
        callerOf(caller),
      );
      return { ok: true, value: found.call.output.parse(value) };
    } catch (error) {
      if (error instanceof Refused) return refuse(error.code, error.message, error.conflicts);
      log.error(`${name} failed`, error);
      return refuse(
        'internal',
        kept() === before
          ? 'Something went wrong inside the app. Nothing was changed; the log file has the details.'
          : 'Something went wrong inside the app, but it may have been kept all the same: look before you enter it again. The log file has the details.',
      );
    }
  };
}

/** The shop is read while the first page is still on its way, so that its own question is answered at once. */
export const readAhead = (serve: Serve): void =>
  void setImmediate(() => void serve(contract.shopRead.name, {}));
