/** Relative luminance of "#rrggbb", 0 black to 1 white. Source: WCAG 2.2, definition of relative luminance. */
export function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5]
    .map((i) => parseInt(hex.slice(i, i + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

/** Contrast ratio of two colours, 1 to 21. Source: WCAG 2.2, definition of contrast ratio. */
export function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** The ink that reads better on a sheet of this colour; one of the two always reaches 4.5 : 1 (their worst is √21). */
export const inkOn = (hex: string): 'black' | 'white' =>
  contrast(hex, '#000000') >= contrast(hex, '#ffffff') ? 'black' : 'white';
