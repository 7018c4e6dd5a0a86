// What a percent cell and a batch size mean. A percentage above 100 is one, for
// the total to count and the check to speak of. What was typed is kept; this only
// reads it.
import { type Decimal, divide, hundred, multiply, parse, print, trim } from './decimal.ts';

export type Percent =
  | { is: 'empty' }
  | { is: 'qs' }
  | { is: 'number'; value: Decimal }
  | { is: 'unclear'; why: 'not-a-number' | 'negative' | 'too-fine' };

// At most six decimals, as in a formula file.
export const finest = 6;

const fills = /^(q\.?\s*s\.?|ad)(\s*(to|ad)?\s*100([.,]0+)?\s*%?)?$/i;

export function readPercent(text: string): Percent {
  const t = text.trim();
  if (t === '') return { is: 'empty' };
  if (fills.test(t)) return { is: 'qs' };
  const value = parse(t.replace(/\s*(%|percent)$/i, ''));
  if (!value) return { is: 'unclear', why: 'not-a-number' };
  if (value.digits < 0n) return { is: 'unclear', why: 'negative' };
  if (trim(value).scale > finest) return { is: 'unclear', why: 'too-fine' };
  return { is: 'number', value };
}

const grams: Record<string, string> = { '': '1', g: '1', kg: '1000', mg: '0.001' };

// Thousands are marked by spaces, or by the one of point and comma that does not
// stand before the decimals: "1 250", "1.250,5", "1,250.5". Alone, "1.250" may be
// either, and is read as decimals, as everywhere.
const grouped = /^\d{1,3}(?: \d{3})+(?:[.,]\d+)?$|^\d{1,3}(?:\.\d{3})+,\d+$|^\d{1,3}(?:,\d{3})+\.\d+$/;

function ungrouped(number: string): string {
  if (!grouped.test(number)) return number;
  const decimals = /[.,]\d+$/.exec(number)?.[0] ?? '';
  return number.slice(0, number.length - decimals.length).replace(/[ .,]/g, '') + decimals;
}

// readGrams reads "250 g", "5 kg", "1,5 kg" or a plain number of grams.
export function readGrams(text: string): Decimal | null {
  const m = /^\s*(\d[\d., ]*?)\s*(kg|mg|g)?\s*$/i.exec(text.replace(/[\u00a0\u2009\u202f]/g, ' '));
  const value = m && parse(ungrouped(m[1] ?? ''));
  const unit = m && parse(grams[(m[2] ?? '').toLowerCase()] ?? '');
  if (!value || !unit) return null;
  return trim(multiply(value, unit));
}

// basis is what the grams column counts for: the batch, or 100 g without one.
// A batch of "5" has been both grams and kilograms: without its unit it is not
// taken, here as on the server.
export function basis(batch: string | undefined): { grams: Decimal; stated: boolean } {
  const read = /[a-z]/i.test(batch ?? '') ? readGrams(batch ?? '') : null;
  return read && read.digits > 0n ? { grams: read, stated: true } : { grams: hundred, stated: false };
}

export function gramsOf(percent: Decimal, batch: Decimal): Decimal {
  const product = multiply(percent, batch);
  return trim({ digits: product.digits, scale: product.scale + 2 });
}

// percentOf turns grams of a batch into the percentage that is written. Where
// it has no end it is rounded to the finest that a formula may hold.
export function percentOf(g: Decimal, batch: Decimal): string | null {
  const value = divide(multiply(g, hundred), batch, finest);
  return value && print(trim(value));
}
