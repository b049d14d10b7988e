/**
 * A whole number with its thousands in groups, "10 000", one of four digits without: parted by a space that does not break,
 * which no shop takes for the mark before its decimals. As ISO 80000-1 has it.
 */
export const grouped = (count: number): string =>
  count.toLocaleString('en-US', { useGrouping: 'min2' }).replaceAll(',', '\u00a0');
