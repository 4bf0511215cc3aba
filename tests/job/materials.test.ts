import { expect, it } from 'vitest';
import { MATERIALS } from '../../src/job/materials.js';

const densityOf = (name: string): number => MATERIALS.find((material) => material.name === name)!.density;

// USDA FPL-GTR-282 (2021), tables 5-3b and 5-5b with equation 4-11: weight at 12 % moisture, lb/ft³, from specific
// gravity at 12 %.
it.each([
  ['western-red-cedar', 22.4],
  ['redwood', 28.0],
  ['redwood-young', 24.5],
  ['sitka-spruce', 28.0],
  ['basswood', 25.9],
  ['balsa', 11.5],
])('%s weighs what the Wood Handbook gives for 12 %% moisture, %d lb/ft³', (name, pounds) => {
  expect(densityOf(name) / 16.0185).toBeCloseTo(pounds, 1);
});

// ASTM D6817, least densities in kg/m³; ASTM C578 for XPS, rounded to whole kg/m³.
it.each([
  ['eps-12', 11.2],
  ['eps-15', 14.4],
  ['eps-19', 18.4],
  ['eps-22', 21.6],
  ['eps-29', 28.8],
  ['eps-39', 38.4],
])('%s weighs the least that ASTM D6817 allows, %d kg/m³', (name, density) => {
  expect(densityOf(name)).toBeCloseTo(density, 1);
});
it.each([
  ['xps-25', 25],
  ['xps-29', 29],
  ['xps-35', 35],
  ['xps-48', 48],
])('%s weighs the least that ASTM C578 allows, %d kg/m³', (name, density) => {
  expect(Math.round(densityOf(name))).toBe(density);
});

it('paulownia weighs what was measured air-dry: 0.317 g/cm³ (Akyildiz & Kol 2010)', () => {
  expect(densityOf('paulownia')).toBe(317);
});
