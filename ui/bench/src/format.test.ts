import { expect, test } from 'vitest';
import type { Figure } from './api/types.ts';
import { cut, local, pointOf, readFigure, shown } from './format.ts';

test('digits follow the band, as quantity.Shown has it', () => {
  expect(shown(0.3058, 0.2626, 0.3644, '1')).toEqual({ value: '0.31', low: '0.26', high: '0.36' });
  expect(shown(3.1929, 2.957, 3.551, 'g/100 g')).toEqual({ value: '3.2', low: '3.0', high: '3.6' });
  expect(shown(1.0807, 1.0771, 1.0854, 'g/mL')).toEqual({ value: '1.081', low: '1.077', high: '1.085' });
  expect(shown(61.0763, 60.89, 61.26, 'mL/100 g')).toEqual({ value: '61.1', low: '60.9', high: '61.3' });
  expect(shown(-0.0004, -0.001, 0.001, '%').value).toBe('0.00');
  expect(shown(1234.5, 1234.5, 1234.5, 'Pa·s').value).toBe('1235');
});

test('numbers take the sign of the place', () => {
  expect(pointOf('de')).toBe(',');
  expect(pointOf('en')).toBe('.');
  expect(pointOf('not a locale')).toBe('.');
  expect(local('-1.5', ',')).toBe('−1,5');
  expect(cut('118.75')).toEqual({ whole: '118', fraction: '.75' });
});

const figure = (more: Partial<Figure>): Figure => ({
  id: 'x',
  title: 'X',
  value: 1,
  low: 0.5,
  high: 1.5,
  unit: '1',
  state: 'good',
  grade: 'estimated',
  method: '',
  causes: [],
  sources: [],
  notes: [],
  ...more,
});

test('a figure is never bare', () => {
  expect(readFigure(figure({}))).toMatchObject({
    value: '1.00',
    band: '0.50–1.50',
    sentence: 'between 0.50 and 1.50, nine times in ten',
  });
  expect(readFigure(figure({ low: 1, high: 1 }))?.band).toBe('exact');
  expect(readFigure(figure({ low: 1, high: 1, causes: [{ name: 'c', low: null, high: null }] }))?.band).toBe(
    'spread not stated',
  );
  expect(readFigure(figure({ value: null, state: 'missing' }))).toBeNull();
  expect(readFigure(figure({ value: -2, low: -3, high: -1, unit: 'g/100 g' }), true)).toMatchObject({
    value: '2.0',
    band: '1.0–3.0',
  });
  expect(readFigure(figure({ value: -2, low: -3, high: 1, unit: 'g/100 g' }))?.band).toBe('−3.0 to 1.0');
});
