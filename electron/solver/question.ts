import type { Shop } from '../../core/shop/state.ts';
import { instant, type Instant } from '../../core/units/brand.ts';
import { Refused } from '../refused.ts';
import { promisesOf } from '../service/promises.ts';
import { pullingIn } from '../service/pulled-in.ts';
import { whyOf } from '../service/why.ts';
import type { AnswerTo, Question, QuestionSolver, Replied } from './messages.ts';
import { pause } from './pace.ts';
import type { Port } from './port.ts';

const pulledIn = pullingIn();

/** Answers one question about the shop; what is refused is told as a sentence. */
export async function reckon(ask: QuestionSolver, port: Port, isWanted: () => boolean): Promise<void> {
  const { jobId, shop, now, about } = ask;
  const reply = (told: Replied['reply']) => port.send({ kind: 'replied', jobId, reply: told });
  try {
    reply({ ok: true, answer: await answerTo(about, shop, instant(now), isWanted) });
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    reply({ ok: false, message: error.message });
  }
}

async function answerTo(
  about: Question,
  shop: Shop,
  now: Instant,
  isWanted: () => boolean,
): Promise<AnswerTo<Question>> {
  if (about.kind === 'why') return whyOf(shop, about.lineId, now);
  if (about.kind === 'protect') return pulledIn(about.confidence, shop, about.records, now);
  const lines = [];
  for (const line of promisesOf(shop, about.order, about.lines, now)) {
    lines.push(line);
    await pause();
    if (!isWanted()) break;
  }
  return { lines };
}
