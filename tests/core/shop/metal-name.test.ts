import { describe, expect, it } from 'vitest';
import { gaugeName, metalName, metalWords } from '../../../core/shop/metal-name.ts';
import { aShop } from '../../support/builders.ts';

describe('how a metal is named', () => {
  it('its gauge as people say it; a decimal thickness as it stands', () => {
    expect(gaugeName('24')).toBe('24 ga');
    expect(gaugeName('.032')).toBe('.032');
  });

  it('gauge, colour, then the material', () => {
    const moss = { materialId: 'galv', gauge: '24', colourId: 'moss' };
    expect(metalName(aShop(), moss)).toBe('24 ga Moss green, Galvanized');
  });

  it('by its codes where rows have gone', () => {
    expect(metalName(aShop(), { materialId: 'zinc', gauge: '.032', colourId: 'rust' })).toBe(
      '.032 rust, zinc',
    );
  });

  it('in the same order when some of it is not known', () => {
    expect(metalWords({ gauge: '24', material: 'Galvanized' })).toBe('24 ga, Galvanized');
    expect(metalWords({ colour: 'Moss', material: 'Galvanized' })).toBe('Moss, Galvanized');
    expect(metalWords({})).toBe('');
  });
});
