/** What the keyboard does on the floor screen; as listed in the dialog of keys. */
export const floorKeys = [
  { keys: 'S', label: 'Start the operation, or resume it after a pause' },
  { keys: 'A', label: 'Pause' },
  { keys: 'L', label: 'Suspend a paused operation, so that the next one can start' },
  { keys: 'D', label: 'Report it done' },
  { keys: 'T', label: 'Give the time it really started or ended' },
  { keys: '+', label: 'One more good piece' },
  { keys: 'X', label: 'One more scrapped piece' },
  { keys: 'C', label: 'One more cut of the step shown' },
  { keys: '←', label: 'The step before' },
  { keys: '→', label: 'The next step' },
  { keys: 'N', label: 'Say who is at the machine, where Settings ask for it' },
] as const;
export type FloorKey = (typeof floorKeys)[number]['keys'];
