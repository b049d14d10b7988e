import '../zod-setup.ts';
import { computations, type Answered, type Asked } from './computations.ts';

/** Computes in a thread of its own, one question after the other. */
self.onmessage = ({ data: { number, what, input } }: MessageEvent<Asked>) => {
  const answer = (answered: Omit<Answered, 'number'>) => self.postMessage({ number, ...answered });
  try {
    answer({ value: (computations[what] as (...input: readonly unknown[]) => unknown)(...input) });
  } catch (error) {
    answer({ trouble: String(error) });
  }
};
