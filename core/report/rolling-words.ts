/**
 * How blanks and bends lie to the direction in which the metal was rolled, which is along a sheet's or coil's length. A blank
 * is never turned on the sheet (core/cutting/run.ts): the grain of its metal, brushed or metallic paint and the arrows on its
 * film run one way. A part's bends run along its length, so parallel to rolling, the direction in which metal cracks first.
 */
export const BLANK_ALONG = 'length along the sheet, as rolled; never turned';
/** Of the metal, on a traveller. */
export const ROLLED_ALONG = 'blank and bends, never turned';
