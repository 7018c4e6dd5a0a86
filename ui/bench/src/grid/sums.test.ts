import { expect, test } from 'vitest';
import { print } from './decimal.ts';
import { sumsOf } from './sums.ts';

const sheet = (...percents: string[]) =>
  sumsOf({ head: {}, making: [], lines: percents.map((percent, i) => ({ id: `l${i}`, cells: { percent } })) });

test('a percentage above 100 counts, and leaves nothing to fill up', () => {
  const s = sheet('101', 'qs');
  expect(print(s.total)).toBe('101');
  expect(print(s.over!)).toBe('1');
  expect(s.lines.get('l1')).toMatchObject({ qs: true, percent: null });
});

test('what cannot be read counts for nothing', () => {
  expect(print(sheet('40', 'abc', '-5', '').total)).toBe('40');
});

test('of two lines that fill up the first does', () => {
  const s = sheet('30', 'qs', 'qs');
  expect(print(s.total)).toBe('100');
  expect(s.lines.get('l1')?.percent).not.toBeNull();
  expect(s.lines.get('l2')).toMatchObject({ qs: true, percent: null });
});
