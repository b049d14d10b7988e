import type { Shift } from './calendar.ts';

/** Open hours until the shop says otherwise: Monday to Friday, eight hours. Common practice, no source. */
export const USUAL_SHIFT: Shift = {
  name: 'Day',
  days: [1, 2, 3, 4, 5],
  start: '07:00',
  end: '15:30',
  breaks: [{ start: '11:30', end: '12:00' }],
};
