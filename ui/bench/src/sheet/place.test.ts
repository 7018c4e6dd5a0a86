import { expect, test } from 'vitest';
import { place, type Wanted } from './place.ts';

const clear = (notes: readonly Wanted[], tops: readonly number[], gap: number) =>
  tops.every((t, i) => i === 0 || t >= (tops[i - 1] as number) + (notes[i - 1] as Wanted).height + gap - 1e-9);
const cost = (notes: readonly Wanted[], tops: readonly number[]) =>
  tops.reduce((s, t, i) => s + Math.abs(t - (notes[i] as Wanted).at), 0);

test('notes with room stand at their level', () => {
  expect(
    place(
      [
        { at: 10, height: 20 },
        { at: 100, height: 20 },
      ],
      8,
    ),
  ).toEqual([10, 100]);
  expect(place([], 8)).toEqual([]);
});

test('two that collide move apart, both', () => {
  expect(
    place(
      [
        { at: 100, height: 60 },
        { at: 132, height: 60 },
      ],
      8,
    ),
  ).toEqual([82, 150]);
});

test('none stands above the table', () => {
  expect(
    place(
      [
        { at: 0, height: 60 },
        { at: 10, height: 60 },
      ],
      8,
    ),
  ).toEqual([0, 68]);
});

test('no other places are nearer in all (tried by brute force)', () => {
  let seed = 7;
  const random = (n: number) => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return seed % n;
  };
  for (let round = 0; round < 60; round++) {
    let at = 0;
    const notes = Array.from({ length: 3 }, () => {
      at += random(4);
      return { at: at + 20, height: 1 + random(4) };
    });
    const tops = place(notes, 1);
    expect(clear(notes, tops, 1)).toBe(true);
    let best = Number.POSITIVE_INFINITY;
    for (let a = 0; a < 45; a++)
      for (let b = a; b < 45; b++)
        for (let c = b; c < 45; c++) if (clear(notes, [a, b, c], 1)) best = Math.min(best, cost(notes, [a, b, c]));
    expect(cost(notes, tops)).toBeLessThanOrEqual(best + 1e-9);
  }
});
