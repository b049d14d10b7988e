/** Sheets of a delivery that a line is cut from. */
export interface Awaited {
  readonly deliveryId: string;
  readonly sheetId: string;
  /** Epoch seconds. */
  readonly due: number;
  /** Sheets of it that the line begins, of a coil one. */
  readonly sheets: number;
}

/** What a line is cut from that does not lie in the shop yet. */
export interface MetalCover {
  /** When the last delivery that it needs is expected; null: it waits for none, or the shop does not wait for metal. */
  readonly arrival: number | null;
  /** The soonest first. */
  readonly awaited: readonly Awaited[];
  /** Blanks that neither stock nor deliveries have sheets for. */
  readonly missing: number;
}
