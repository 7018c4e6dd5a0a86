import { expect, test } from 'vitest';
import { add, compare, divide, multiply, parse, print, round, subtract, sum, trim } from './decimal.ts';

const d = (text: string) => {
  const v = parse(text);
  if (!v) throw new Error(text);
  return v;
};

test('reads a point and a comma, refuses the rest', () => {
  expect(print(d('12,5'))).toBe('12.5');
  expect(print(d(' 007.10 '))).toBe('7.10');
  for (const bad of ['', '.5', '5.', '1e3', '1.234.5', '1 000', 'NaN', '--1', '12 %']) expect(parse(bad)).toBeNull();
});

test('what floats get wrong is right', () => {
  expect(print(add(d('0.1'), d('0.2')))).toBe('0.3');
  expect(print(sum(Array.from({ length: 10 }, () => d('0.1'))))).toBe('1.0');
  expect(print(subtract(d('100'), d('99.999999')))).toBe('0.000001');
  expect(print(multiply(d('1.005'), d('100')))).toBe('100.500');
});

test('rounds halves away from zero', () => {
  expect(print(round(d('1.005'), 2))).toBe('1.01');
  expect(print(round(d('-1.005'), 2))).toBe('-1.01');
  expect(print(round(d('2.4'), 2))).toBe('2.4');
  expect(print(divide(d('1'), d('3'), 6)!)).toBe('0.333333');
  expect(print(divide(d('-2'), d('3'), 2)!)).toBe('-0.67');
  expect(print(divide(d('2'), d('-3'), 2)!)).toBe('-0.67');
  expect(divide(d('1'), d('0.00'), 2)).toBeNull();
});

test('a quotient times its divisor comes back', () => {
  for (let n = 1; n < 400; n++) {
    const a = d(`${n}.${n % 97}`);
    const b = d(`${(n * 7) % 101}.5`);
    expect(compare(divide(multiply(a, b), b, a.scale)!, a)).toBe(0);
  }
});

test('prints small and negative numbers', () => {
  expect(print(d('-0.05'))).toBe('-0.05');
  expect(print(d('3'), 2)).toBe('3.00');
  expect(print(trim(d('21.500000'), 2))).toBe('21.50');
  expect(print(trim(d('100')))).toBe('100');
});
