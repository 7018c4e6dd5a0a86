// Numbers and dates as they are read here. Digits follow the band, as
// quantity.Shown has it.

import type { Figure } from './api/types.ts';
import { type Decimal, print, round, trim } from './grid/decimal.ts';
import { say } from './words.ts';

export const locale: string = typeof navigator === 'undefined' ? 'en' : navigator.language || 'en';

export function pointOf(of: string): string {
  try {
    return new Intl.NumberFormat(of).formatToParts(1.5).find((p) => p.type === 'decimal')?.value ?? '.';
  } catch {
    return '.';
  }
}

export const point: string = pointOf(locale);

// local gives a number's text the decimal sign of the place and a printer's
// minus.
export const local = (text: string, sign = point): string => text.replace('.', sign).replace('-', '−');

const decimalsOf = (unit: string): [number, number] => {
  switch (unit) {
    case '1':
      return [2, 2];
    case 'g/mL':
      return [2, 3];
    case '%':
    case 'g/100 g':
    case 'mL/100 g':
      return [1, 2];
  }
  return [0, 3];
};

const clamp = (n: number, min: number, max: number): number => Math.max(min, Math.min(max, n));
const fixed = (v: number, n: number): string => {
  const s = v.toFixed(n);
  return /^-0(\.0+)?$/.test(s) ? s.slice(1) : s;
};

export function significant(v: number, digits: number): string {
  if (v === 0) return '0';
  const a = Math.abs(v);
  if (a >= 1e-4 && a < 1e9) return v.toFixed(clamp(digits - 1 - Math.floor(Math.log10(a)), 0, 12));
  return v.toPrecision(digits);
}

export interface Shown {
  value: string;
  low: string;
  high: string;
}

export function shown(v: number, low: number, high: number, unit: string): Shown {
  const [min, max] = decimalsOf(unit);
  if (min === 0 && low === high) {
    const s = significant(v, 3);
    return { value: s, low: s, high: s };
  }
  let n = max;
  const half = (high - low) / 2;
  if (half > 0) {
    n = Math.ceil(-Math.log10(half));
    const a = Math.abs(v);
    if (a > 0 && a < 1 && Math.min(v - low, high - v) < 0.55 * a) n = Math.max(n, Math.ceil(1 - Math.log10(a)));
    n = clamp(n, min, max);
  }
  return { value: fixed(v, n), low: fixed(low, n), high: fixed(high, n) };
}

export interface Read {
  value: string;
  unit: string;
  band: string; // "0.28–0.34"
  sentence: string; // "between 0.28 and 0.34, nine times in ten"
}

// readFigure writes a figure that has a value; null for one that is missing.
export function readFigure(f: Figure, flip = false): Read | null {
  if (f.state === 'missing' || f.value === null || f.low === null || f.high === null) return null;
  const [v, lo, hi] = flip ? [-f.value, -f.high, -f.low] : [f.value, f.low, f.high];
  const s = shown(v, lo, hi, f.unit);
  const unit = f.unit === '1' || f.unit === '' ? '' : f.unit;
  const [low, high] = [local(s.low), local(s.high)];
  if (f.low === f.high) {
    const word = f.causes.some((c) => c.low === null) ? say('strip.unstated') : say('strip.exact');
    return { value: local(s.value), unit, band: word, sentence: word };
  }
  const band = s.low.startsWith('-') || s.high.startsWith('-') ? say('band.to', { low, high }) : `${low}–${high}`;
  return { value: local(s.value), unit, band, sentence: say('band.between', { low, high }) };
}

export function evidence(f: Figure): string {
  return f.state === 'out-of-range' ? say('strip.out', { grade: f.grade }) : f.grade;
}

// cut splits a number at its point, so that points stand under each other.
export function cut(text: string): { whole: string; fraction: string } {
  const [whole = '', fraction = ''] = text.split('.');
  return { whole: local(whole), fraction: fraction && point + fraction };
}

// percentText shows a percentage with two decimals at least and those typed.
export const percentText = (d: Decimal): string => print(trim(d, 2), 2);
export const gramsText = (d: Decimal): string => print(trim(round(d, 3), 2), 2);

const day = 86_400_000;

export function when(iso: string, now = Date.now()): string {
  const t = Date.parse(iso);
  if (Number.isNaN(t)) return '';
  const near = Math.abs(now - t) < day;
  return new Intl.DateTimeFormat(
    locale,
    near ? { hour: '2-digit', minute: '2-digit' } : { day: 'numeric', month: 'short', year: 'numeric' },
  ).format(t);
}

export const clockTime = (t: number): string =>
  new Intl.DateTimeFormat(locale, { hour: '2-digit', minute: '2-digit' }).format(t);
