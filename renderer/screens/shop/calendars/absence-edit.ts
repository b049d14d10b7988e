import type { Absence } from '../../../../core/shop/machine.ts';
import type { Shop } from '../../../../core/shop/state.ts';
import { counted } from '../../../../core/units/count.ts';

/** The next free code for people who are out, "out-2". */
export function nextAbsenceId(shop: Shop): string {
  const taken = new Set(shop.absence.map(({ id }) => id));
  let number = 1;
  while (taken.has(`out-${number}`)) number += 1;
  return `out-${number}`;
}

export const freshAbsence = (shop: Shop): Absence => ({
  id: nextAbsenceId(shop),
  people: 1,
  from: NaN,
  to: NaN,
  reason: '',
  revision: 0,
});

/** "1 person out", "3 people out" */
export const peopleOutWords = (people: number): string => counted(people, 'person out', 'people out');
