/** What the keyboard does on the board, for its handler's reader and for the list of keys. */
export const boardKeys = [
  { keys: '←+→', label: 'Operation before or after, in the lane' },
  { keys: '↑+↓', label: 'Lane above or below' },
  { keys: 'Alt+←', label: 'Move the operation earlier in the queue' },
  { keys: 'Alt+→', label: 'Move the operation later in the queue' },
  { keys: 'Alt+↑', label: 'Move the operation to the machine above' },
  { keys: 'Alt+↓', label: 'Move the operation to the machine below' },
  { keys: 'Space', label: 'Pin or unpin the operation' },
  { keys: 'W', label: 'Why late, or why not sooner: causes and what would help' },
  { keys: 'Escape', label: 'Cancel a drag, or clear the selection' },
  { keys: '+', label: 'Zoom in' },
  { keys: '-', label: 'Zoom out' },
  { keys: '0', label: 'See the whole plan' },
  { keys: 'T', label: 'Go to now' },
  { keys: 'Shift+←', label: 'Scroll earlier' },
  { keys: 'Shift+→', label: 'Scroll later' },
] as const;
