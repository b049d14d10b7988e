import type { Issue } from '../result.ts';

/** "line 1042/2, part cap" → "1042/2" */
export const lineOfIssue = ({ subject }: Pick<Issue, 'subject'>): string =>
  /^line ([^,\s]+)/.exec(subject)?.[1] ?? subject;

/** The open lines that cannot be planned, each once however much speaks against it. */
export const linesLeftOut = (unplannable: readonly Issue[]): string[] => [
  ...new Set(unplannable.map(lineOfIssue)),
];
