import { expect, test } from 'vitest';
import type { Material } from '../api/types.ts';
import { closeness, nearest, searches } from './nearest.ts';

const material = (name: string): Material => ({ code: name, name, inci: [], role: [], origin: '', form: '' });

test('asks for the whole name first, then for less and less of it', () => {
  expect(searches('Glycerine (veg.) 99.5 %')).toEqual(['Glycerine (veg.) 99.5 %', 'Glycerine', 'Glycer']);
});

test('the closest comes first, and a misspelt name finds its own', async () => {
  const shelf = ['Glyceryl stearate', 'Glycerin, vegetable, 99.5 %', 'Kaolin'].map(material);
  const find = async (text: string) => ({
    materials: shelf.filter((m) => m.name.toLowerCase().includes(text.toLowerCase())),
  });
  const got = await nearest('Glycerine', 2, new AbortController().signal, find as never);
  expect(got[0]?.name).toBe('Glycerin, vegetable, 99.5 %');
  expect(closeness('Kaolin', 'kaolín')).toBe(1);
  expect(await nearest('Zzz', 2, new AbortController().signal, find as never)).toEqual([]);
});
