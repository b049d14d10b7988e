/**
 * A chance in whole percent. The plan was played through only so often, so that never and always are not known: it says
 * "under 1 %" and "over 99 %".
 * @param share of the times that the plan was played through, 0 to 1
 */
export function chanceWords(share: number): string {
  if (share < 0.01) return 'under 1 %';
  if (share > 0.99) return 'over 99 %';
  return `${Math.round(share * 100)} %`;
}

/** A chance is far from what the plan shows when it came out otherwise more often than not (our own limit). */
const FAR = 0.5;

/**
 * Why a chance on time is far from what the plan shows, as a sentence; empty where the two agree.
 * @param share of the times that the plan was played through in which the line is on time, 0 to 1
 * @param late whether the plan shows it late
 */
export function farChanceWords(share: number, late: boolean): string {
  if (!late && share < FAR) return 'The plan shows it on time, but past work overran these estimates.';
  if (late && 1 - share < FAR) return 'The plan shows it late, but past work took less than these estimates.';
  return '';
}
