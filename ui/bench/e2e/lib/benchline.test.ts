import { expect, test } from 'vitest';
import { benchLine, percentile } from './benchline.ts';

test('a percentile is one of the values, and not above that share of them', () => {
  const hundred = Array.from({ length: 100 }, (_, i) => 100 - i);
  expect(percentile(hundred, 0.5)).toBe(50);
  expect(percentile(hundred, 0.95)).toBe(95);
  expect(percentile([9, 10, 1], 0.95)).toBe(10); // as numbers, not as text
  expect(percentile([3], 0)).toBe(3);
  expect(() => percentile([], 0.5)).toThrow();
});

test('a line is one that benchstat reads', () => {
  const line = benchLine('Keystroke/lines=40', 100, { 'p50-ms': 12.345, 'p95-ms': 20 });
  expect(line).toBe('BenchmarkKeystroke/lines=40\t100\t12.35 p50-ms\t20.00 p95-ms');
});
