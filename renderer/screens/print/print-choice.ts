import { placeOf, type Place } from '../../router.ts';

/** What is to be printed: one machine or all, and how many days from today. */
export interface PrintChoice {
  /** null: every machine, one page run each. */
  readonly machineId: string | null;
  readonly days: number;
  /** With a drawing of each part that a brake makes. */
  readonly drawings: boolean;
}

const MOST_DAYS = 28;
const USUAL_DAYS = 7;

/** The choice in an address, "#/print/dispatch?machine=S1&days=7"; what makes no sense there becomes the usual. */
export function readPrintChoice({ query }: Pick<Place, 'query'>): PrintChoice {
  const days = Number(query.get('days') ?? USUAL_DAYS);
  return {
    machineId: query.get('machine'),
    days: Number.isInteger(days) && days >= 1 && days <= MOST_DAYS ? days : USUAL_DAYS,
    drawings: query.get('drawings') === 'yes',
  };
}

export function printAddress({ machineId, days, drawings }: PrintChoice): string {
  const query = new URLSearchParams({
    ...(machineId === null ? {} : { machine: machineId }),
    days: String(days),
    ...(drawings ? { drawings: 'yes' } : {}),
  });
  return `${placeOf('print', 'dispatch')}?${query.toString()}`;
}
