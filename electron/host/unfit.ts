import type { z } from 'zod';

type Issues = readonly z.core.$ZodIssue[];

/** Places named of a request that does not fit, and characters of what is said of each: it may have come from anywhere. */
const PLACES = 3;
const CHARACTERS = 200;

/** What does not fit in a request, in one sentence, however much of it is wrong. */
export function unfit({ issues }: z.ZodError): string {
  const found = closest(issues);
  const places = found.slice(0, PLACES).map(({ path, message }) => {
    const where = path.map(String).join('.');
    return short(where === '' ? message : `${where}: ${message}`);
  });
  const left = found.length - PLACES;
  const more = left > 0 ? `, and ${left} more ${left === 1 ? 'place' : 'places'}` : '';
  return `The request does not fit (${places.join('; ')}${more}). Nothing was changed; correct it, then try again.`;
}

const short = (text: string): string => (text.length > CHARACTERS ? `${text.slice(0, CHARACTERS)}…` : text);

/** Of several shapes that a value could have had, the one it comes closest to says best what is wrong. */
const closest = (issues: Issues): Issues =>
  issues.flatMap((issue): Issues => {
    if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [issue];
    const [best = []] = [...issue.errors].sort((a, b) => misnamed(a) - misnamed(b) || a.length - b.length);
    return closest(best.map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] })));
  });

/** How many of the words that name a shape differ. */
const misnamed = (issues: Issues): number => issues.filter(({ code }) => code === 'invalid_value').length;
