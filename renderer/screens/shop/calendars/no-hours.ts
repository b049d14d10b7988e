/** Said of a calendar without shifts and overtime, and at the machines that keep it. */
export const NO_HOURS =
  'This calendar has no open hours: nothing can be planned on a machine that keeps it. Give it a shift.';
