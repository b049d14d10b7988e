/** A figure that names no unit: "96 1/2", "2440". */
export const isBareFigure = (text: string): boolean => /^[^\p{L}"'’”′″]+$/u.test(text);

/** A figure with a fraction, as inches are written and millimetres never are (common practice, no source). */
export const hasFraction = (text: string): boolean => /\d\s*[/⁄]\s*\d|[½⅓⅔¼¾⅛⅜⅝⅞]/.test(text);
