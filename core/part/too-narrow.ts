/** What to do with a piece that the back gauge does not reach or the hold-downs do not grip. Common practice, no source. */
export const TOO_NARROW_TO_HOLD = 'Cut it on a machine made for narrow strips; never hold it by hand.';
