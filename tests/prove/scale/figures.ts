/** From times to figures. */

/** The value that `share` of them do not exceed (nearest rank). */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

export const p50 = (values: readonly number[]): number => quantile(values, 0.5);
export const p95 = (values: readonly number[]): number => quantile(values, 0.95);

/** The exponent k of y = c * x^k: least squares over the logarithms. */
export function exponent(points: readonly (readonly [x: number, y: number])[]): number {
  if (points.length < 2) throw new Error('An exponent needs two points.');
  const logs = points.map(([x, y]) => [Math.log(x), Math.log(y)] as const);
  const mean = (at: 0 | 1) => logs.reduce((sum, point) => sum + point[at], 0) / logs.length;
  const [mx, my] = [mean(0), mean(1)];
  const over = logs.reduce((sum, [x, y]) => sum + (x - mx) * (y - my), 0);
  const under = logs.reduce((sum, [x]) => sum + (x - mx) ** 2, 0);
  return over / under;
}
