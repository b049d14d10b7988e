import type { Schedule } from '../problem.ts';

/** An answer as it crosses the border: the order only, for its times are decoded again where they are shown. */
export const withoutTimes = <T extends { readonly schedule: Schedule }>({
  schedule: _,
  ...answer
}: T): Omit<T, 'schedule'> => answer;
