/** What the keyboard does on the floor screen; as listed in the dialog of keys. */
export const floorKeys = [
  { keys: 'S', label: 'Start the operation, or go on after a pause' },
  { keys: 'A', label: 'Pause' },
  { keys: 'L', label: 'Set a paused operation aside, so that the next one can begin' },
  { keys: 'D', label: 'Report it done' },
  { keys: 'T', label: 'Give the time it really began or ended' },
  { keys: '+', label: 'One more good piece' },
  { keys: 'X', label: 'One more scrapped piece' },
  { keys: 'N', label: 'Say who is at the machine, where Settings ask for it' },
] as const;
export type FloorKey = (typeof floorKeys)[number]['keys'];
