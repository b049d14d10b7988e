/** A count with its noun: "1 line", "3 lines". @param many the plural, where it is not the noun with an s */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** "once", "3 times" */
export const times = (count: number): string => (count === 1 ? 'once' : `${count} times`);
