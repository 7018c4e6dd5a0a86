import { expect, test } from 'vitest';
import type { Figure } from '../api/types.ts';
import { roomy, stripFigure, type Told } from './figures.ts';

const figure = (
  id: string,
  value: number | null,
  low: number | null,
  high: number | null,
  more: Partial<Figure> = {},
): Figure => ({
  id,
  title: id,
  value,
  low,
  high,
  unit: id === 'water.activity' ? '1' : 'g/100 g',
  state: value === null ? 'missing' : 'good',
  grade: 'estimated',
  method: '',
  causes: [],
  sources: [],
  notes: ['needs a density for line 9'],
  ...more,
});
const told: Told = {
  figures: [figure('water.reserve-075', 13, 11, 15)],
  temperature: '25',
  wrote: '2.0',
  limits: { 'water.reserve': '0.60', 'water.reserve-075': '0.75' },
};

test('an axis stays while the figure moves on it', () => {
  expect(stripFigure(figure('water.total', 3.2, 3, 3.6), told).axis).toMatchObject({ min: 0, max: 5 });
  expect(stripFigure(figure('water.total', 4.1, 4, 4.6), told).axis).toMatchObject({ min: 0, max: 5 });
  expect(stripFigure(figure('water.total', 74, 70, 75), told).axis).toMatchObject({ max: 100 });
  expect(roomy(0.31)).toBe(0.5);
  expect(roomy(0)).toBe(1);
});

test('room below none is said the other way round', () => {
  const f = stripFigure(figure('water.reserve', -5, -6, -4), told);
  expect(f.title).toBe('Over by');
  expect(f.read?.value).toBe('5.0');
  expect(f.axis).toMatchObject({ value: 5, low: 4, high: 6 });
});

test('the sentence read out has value, band and evidence; a missing figure says why', () => {
  expect(stripFigure(figure('water.activity', 0.3, 0.28, 0.34), told).spoken).toBe(
    'Water activity 0.30, between 0.28 and 0.34, nine times in ten, estimated.',
  );
  expect(stripFigure(figure('structure.density', null, null, null), told)).toMatchObject({
    read: null,
    why: 'needs a density for line 9',
    axis: null,
  });
  expect(stripFigure(figure('water.reserve', 5.8, 4.7, 6.8), told).note).toContain('13');
});

test('limits come with the check, and a band below the axis is shown whole', () => {
  const f = stripFigure(figure('water.reserve', -0.2, -1.5, 1.1), { ...told, limits: { 'water.reserve': '0.61' } });
  expect(f.note).toBe('before 0.61');
  expect(f.axis).toMatchObject({ min: -2, low: -1.5, high: 1.1 });
  expect(stripFigure(figure('water.activity', 0.3, 0.28, 0.34), told).axis?.ticks).toContainEqual({
    at: 0.6,
    text: '0.60',
  });
});
