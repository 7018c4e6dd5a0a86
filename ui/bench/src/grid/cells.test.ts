import { expect, test } from 'vitest';
import { basis, gramsOf, percentOf, readGrams, readPercent } from './cells.ts';
import { parse, print } from './decimal.ts';

test('a percent cell is read as people write it', () => {
  for (const t of ['12.5', '12,5', '12.5 %', ' 12.5%', '12.500']) {
    const p = readPercent(t);
    expect(p.is === 'number' && Number(print(p.value))).toBe(12.5);
  }
  for (const t of ['qs', 'q.s.', 'QS', 'q. s.', 'q.s. to 100', 'qs 100', 'ad 100', 'q.s. ad 100 %'])
    expect(readPercent(t).is).toBe('qs');
  expect(readPercent('  ').is).toBe('empty');
  for (const [t, why] of [
    ['twelve', 'not-a-number'],
    ['-1', 'negative'],
    ['0.1234567', 'too-fine'],
    ['1.2.3', 'not-a-number'],
  ]) {
    expect(readPercent(t as string)).toEqual({ is: 'unclear', why });
  }
  for (const t of ['0.1234560', '101']) expect(readPercent(t).is).toBe('number');
});

test('a batch has a unit or is grams', () => {
  expect(print(readGrams('250 g')!)).toBe('250');
  expect(print(readGrams('1,5 kg')!)).toBe('1500');
  expect(print(readGrams('500')!)).toBe('500');
  for (const bad of ['', 'big', '5 lb', '-5 g', '1.2.3']) expect(readGrams(bad)).toBeNull();
  expect(basis(undefined)).toEqual({ grams: { digits: 100n, scale: 0 }, stated: false });
  expect(basis('0 g').stated).toBe(false);
});

test('grams and percent turn into each other exactly', () => {
  const batch = readGrams('250 g')!;
  expect(print(gramsOf(parse('0.30')!, batch))).toBe('0.75');
  expect(percentOf(parse('52.5')!, batch)).toBe('21');
  expect(percentOf(parse('1')!, parse('3')!)).toBe('33.333333');
  expect(percentOf(parse('1')!, parse('0')!)).toBeNull();
});

test('marks between thousands are read in grams where they can mean nothing else', () => {
  for (const t of ['1 250', '1\u202f250 g', '1.250,0', '1,250.00', '1 250,0 g', '1,25 kg'])
    expect(print(readGrams(t)!).replace(/\.0+$/, ''), t).toBe('1250');
  expect(print(readGrams('1.250')!)).toBe('1.25');
  for (const bad of ['12 50', '1.25,0', '1,250,00', '1 250 50', '1.250.000', ' . '])
    expect(readGrams(bad), bad).toBeNull();
});

test('a batch without its unit is not taken', () => {
  expect(basis('700')).toMatchObject({ stated: false });
  expect(basis('700 g')).toMatchObject({ stated: true });
  expect(print(basis('0.7 kg').grams)).toBe('700');
});
