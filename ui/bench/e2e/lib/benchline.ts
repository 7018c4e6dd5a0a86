// One line as go test -bench prints it, so that benchstat compares two runs.
export function benchLine(name: string, times: number, measured: Record<string, number>): string {
  const figures = Object.entries(measured).map(([unit, value]) => `${value.toFixed(2)} ${unit}`);
  return [`Benchmark${name}`, times, ...figures].join('\t');
}

/** The smallest value that this share of all are not above. */
export function percentile(values: readonly number[], share: number): number {
  if (values.length === 0) throw new Error('a percentile of nothing');
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] as number;
}
