import { describe, expect, it } from 'vitest';
import { assumedInches, FAR_MM, FIGURE_SHARE, farPx, mmPerPx } from '../../../renderer/screens/floor/far.ts';

/** Screens that stand at machines, in CSS pixels, and the inches that each is taken for. */
const screens = [
  { width: 800, height: 1280, inches: 10 },
  { width: 1280, height: 800, inches: 10 },
  { width: 1024, height: 768, inches: 10 },
  { width: 1440, height: 900, inches: 24 },
  { width: 1920, height: 1080, inches: 24 },
];

describe('what is read from three metres', () => {
  it('is a two-hundredth of the distance high: 15 mm', () => {
    expect(FAR_MM).toBe(15);
  });

  it.each(screens)('has figures of 15 mm and more on $width × $height at $inches in', (screen) => {
    expect(assumedInches(screen.width, screen.height)).toBe(screen.inches);
    const figureMm = farPx(screen) * FIGURE_SHARE * mmPerPx(screen);
    expect(figureMm).toBeGreaterThanOrEqual(15);
    expect(figureMm).toBeLessThan(15.5);
  });

  it('is larger in pixels the smaller the screen is', () => {
    const [width, height] = [1280, 800];
    expect(farPx({ width, height, inches: 8 })).toBeGreaterThan(farPx({ width, height, inches: 13 }));
  });
});
