/** Paper that a drawing may take, without the room for its lengths. */
const LARGEST = { width: 135, height: 85 };
const SCALES = [5, 2, 1, 1 / 2, 1 / 5, 1 / 10, 1 / 20, 1 / 50];

/** The largest usual scale at which a drawing of that size fits the paper; millimetres on paper a millimetre of the part. */
export const drawingScale = (box: { readonly width: number; readonly height: number }): number =>
  SCALES.find((scale) => box.width * scale <= LARGEST.width && box.height * scale <= LARGEST.height) ??
  (SCALES.at(-1) as number);

/** "1 : 2" */
export const scaleName = (scale: number): string =>
  scale >= 1 ? `${scale} : 1` : `1 : ${Math.round(1 / scale)}`;
