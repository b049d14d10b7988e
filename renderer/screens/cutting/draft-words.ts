import { useUnpublished } from '../../queries/plans.ts';

/** Said behind what the screen leads with while the shear's queue on the board is not the published one; else nothing. */
export function useDraftWords(machineId: string): string {
  return useUnpublished().has(machineId)
    ? '. This is the plan on the board; the floor and the printed list follow the one published last'
    : '';
}
