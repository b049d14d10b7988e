import type { Call, ErrorCode, InputOf, OutputOf, Reply } from '../../core/contract/call.ts';
import type { Push } from '../../core/contract/push.ts';
import type { Conflict } from '../../core/result.ts';
import { caller } from './caller.ts';

/** What the desktop window's preload offers; missing in a plain browser, where the same host listens on loopback HTTP. */
interface Bridge {
  call(name: string, input: unknown, caller: string): Promise<unknown>;
  onPush(listener: (push: unknown) => void): () => void;
}

declare global {
  interface Window {
    readonly bridge?: Bridge;
  }
}

/** A refusal by the host: its message is a sentence made for the user. */
export class AppError extends Error {
  readonly code: ErrorCode;
  /** Rows that someone else changed first, each in both versions. */
  readonly conflicts: readonly Conflict[];

  constructor(code: ErrorCode, message: string, conflicts: readonly Conflict[] = []) {
    super(message);
    this.code = code;
    this.conflicts = conflicts;
  }
}

const unreachable = () =>
  new AppError(
    'unavailable',
    'The planner behind this page does not answer. Everything saved so far is kept; start Foldweek again and open its new address.',
  );

async function post(name: string, input: unknown): Promise<unknown> {
  const response = await fetch(`/call/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json', 'x-caller': caller() },
    body: JSON.stringify(input),
  }).catch(() => {
    throw unreachable();
  });
  return response.json().catch(() => {
    throw unreachable();
  });
}

/**
 * Ask the host for one thing of the contract. The host has checked its answer against the same schema.
 * @throws AppError with the host's sentence
 */
export async function invoke<C extends Call>(def: C, input: InputOf<C>): Promise<OutputOf<C>> {
  const raw = window.bridge
    ? await window.bridge.call(def.name, input, caller())
    : await post(def.name, input);
  const reply = raw as Reply<OutputOf<C>>;
  if (!reply.ok) throw new AppError(reply.error.code, reply.error.message, reply.error.conflicts);
  return reply.value;
}

/**
 * Hear what the host says unasked.
 * @param onOpen each time the line is open, at first and after it was cut: something may have been missed
 * @returns a function that stops listening
 */
export function onPush(listener: (push: Push) => void, onOpen: () => void = () => undefined): () => void {
  if (window.bridge) return window.bridge.onPush((push) => listener(push as Push));
  const source = new EventSource('/push');
  source.onmessage = (event: MessageEvent<string>) => listener(JSON.parse(event.data) as Push);
  source.onopen = onOpen;
  return () => source.close();
}
