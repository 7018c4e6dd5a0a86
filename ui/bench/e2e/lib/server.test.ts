import { expect, test } from 'vitest';
import { addressIn } from './server.ts';

test('the address is read once its line is whole', () => {
  const line = 'Levigate at http://127.0.0.1:4711/?token=abc-_1\n';
  for (let n = 0; n < line.length; n++) expect(addressIn(line.slice(0, n))).toBeUndefined();
  expect(addressIn(line)).toBe('http://127.0.0.1:4711/?token=abc-_1');
  expect(addressIn('opening\nLevigate at http://[::1]:9/\nmore')).toBe('http://[::1]:9/');
});

test('no other address is taken for it', () => {
  for (const said of ['see http://elsewhere.invalid/?token=x\n', 'http://127.0.0.1/\n', ''])
    expect(addressIn(said)).toBeUndefined();
});
