import type { Attributes, Changeover } from '../../../core/schedule/changeover.ts';

/** The rule as the problem states it, attribute by attribute; something that is part of those in `fetched` is fetched. */
export function changeoverSeconds(
  rules: Changeover | null,
  from: Attributes,
  to: Attributes,
  fetched: readonly string[] = [],
): number {
  let sum = 0;
  let largest = 0;
  for (const [attribute, value] of Object.entries(to)) {
    const was = from[attribute];
    const { pairs } = rules ?? {};
    let seconds = 0;
    if (pairs?.attribute === attribute) {
      const [row, column] = [pairs.values.indexOf(was ?? ''), pairs.values.indexOf(value)];
      seconds = was === undefined ? (pairs.initial?.[column] ?? 0) : pairs.seconds[row]![column]!;
    } else if (was !== undefined && was !== value) {
      const exception = rules?.exceptions?.find(
        (e) => e.attribute === attribute && e.from === was && e.to === value,
      );
      seconds = exception?.seconds ?? rules?.attributes[attribute] ?? 0;
    }
    if (fetched.includes(attribute)) seconds = Math.max(seconds, rules?.attributes[attribute] ?? 0);
    sum += seconds;
    largest = Math.max(largest, seconds);
  }
  return rules?.combine === 'max' ? largest : sum;
}
