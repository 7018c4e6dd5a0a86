// Exact decimals: a whole number and how many of its digits stand behind the
// point. Percentages and grams never pass through a float.
export interface Decimal {
  readonly digits: bigint;
  readonly scale: number;
}

export const zero: Decimal = { digits: 0n, scale: 0 };
export const hundred: Decimal = { digits: 100n, scale: 0 };

const ten = (n: number): bigint => 10n ** BigInt(n);

// parse reads "12.5" or "12,5"; null for anything else.
export function parse(text: string): Decimal | null {
  const m = /^\s*(-?)(\d{1,15})(?:[.,](\d{1,12}))?\s*$/.exec(text);
  if (!m) return null;
  const fraction = m[3] ?? '';
  const digits = BigInt(`${m[2]}${fraction}`);
  return { digits: m[1] ? -digits : digits, scale: fraction.length };
}

const lift = (a: Decimal, scale: number): bigint => a.digits * ten(scale - a.scale);

export function add(a: Decimal, b: Decimal): Decimal {
  const scale = Math.max(a.scale, b.scale);
  return { digits: lift(a, scale) + lift(b, scale), scale };
}

export const negative = (a: Decimal): Decimal => ({ digits: -a.digits, scale: a.scale });

export const subtract = (a: Decimal, b: Decimal): Decimal => add(a, negative(b));

export const multiply = (a: Decimal, b: Decimal): Decimal => ({
  digits: a.digits * b.digits,
  scale: a.scale + b.scale,
});

export const sum = (of: readonly Decimal[]): Decimal => of.reduce(add, zero);

export function compare(a: Decimal, b: Decimal): number {
  const { digits } = subtract(a, b);
  return digits < 0n ? -1 : digits > 0n ? 1 : 0;
}

// halves rounds n / d to a whole number, halves away from zero.
function halves(n: bigint, d: bigint): bigint {
  const up = n < 0n !== d < 0n ? -1n : 1n;
  const [p, q] = [n < 0n ? -n : n, d < 0n ? -d : d];
  return up * ((2n * p + q) / (2n * q));
}

export function round(a: Decimal, scale: number): Decimal {
  if (a.scale <= scale) return a;
  return { digits: halves(a.digits, ten(a.scale - scale)), scale };
}

// divide rounds to so many decimals; null by nothing.
export function divide(a: Decimal, b: Decimal, scale: number): Decimal | null {
  if (b.digits === 0n) return null;
  return { digits: halves(a.digits * ten(scale + b.scale), b.digits * ten(a.scale)), scale };
}

// trim takes away zeros at the end, but keeps so many decimals.
export function trim(a: Decimal, least = 0): Decimal {
  let { digits, scale } = a;
  while (scale > least && digits % 10n === 0n) {
    digits /= 10n;
    scale--;
  }
  return { digits, scale };
}

// print writes it with a point, and with at least so many decimals.
export function print(a: Decimal, least = 0): string {
  const scale = Math.max(a.scale, least);
  const digits = lift(a, scale);
  const text = (digits < 0n ? -digits : digits).toString().padStart(scale + 1, '0');
  const whole = text.slice(0, text.length - scale);
  return (digits < 0n ? '-' : '') + whole + (scale ? `.${text.slice(-scale)}` : '');
}
