import { useEffect, useState } from 'react';
import type { Promised } from '../../../core/planning/answers.ts';
import type { Chances } from '../../../core/learn/chance.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { usePromise } from '../../queries/ask.ts';
import { useTypedChances } from '../../queries/chances.ts';
import { useNow } from '../../queries/hooks.ts';
import type { OrderEntries } from './order-entries.ts';
import { promiseQuestion, type PromiseQuestion } from './promise-question.ts';

/** Long enough that a number is typed to its end, short enough to seem at once. */
const PAUSE_MS = 250;

interface Promises {
  /** By line id. */
  readonly lines: ReadonlyMap<string, Promised>;
  /** What was typed last is not answered yet. */
  readonly old: boolean;
  /** The chances of the lines that were offered a date; null while too little work is finished. */
  readonly chances: Chances | null;
  /** Why there is no answer; null where there is none to be had yet. */
  readonly trouble: string | null;
}

/** The dates that can be promised for the order on the form, looked up when typing rests for a moment. */
export function usePromises(shop: Shop, entries: OrderEntries): Promises {
  const asked = JSON.stringify(promiseQuestion(entries, useNow()));
  const [settled, settle] = useState(asked);
  useEffect(() => {
    const timer = setTimeout(() => settle(asked), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [asked]);
  const { data, error, isPlaceholderData } = usePromise(settled, shop);
  const question = isPlaceholderData ? null : (JSON.parse(settled) as PromiseQuestion | null);
  const chances = useTypedChances(question, data, shop);
  return {
    lines: new Map(data?.lines.map((line) => [line.lineId, line])),
    old: asked !== settled || isPlaceholderData,
    chances,
    trouble: error?.message ?? null,
  };
}
