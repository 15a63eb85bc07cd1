const EPSILON = 2 ** -53;
const TINY = 1e-300;
const HALF_LOG_TWO_PI = 0.9189385332046728;

// Lanczos coefficients for g = 7, n = 9 (Godfrey 2001): relative error below 2e-15 for x > 0.
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
  -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
  1.5056327351493116e-7,
];

/** Natural logarithm of the gamma function for x > 0. */
export function logGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - logGamma(1 - x);
  if (x > 16) return (x - 0.5) * Math.log(x) - x + HALF_LOG_TWO_PI + stirlingRest(x);
  const z = x - 1;
  const sum = LANCZOS.reduce((total, c, i) => (i === 0 ? c : total + c / (z + i)), 0);
  const t = z + 7.5;
  return HALF_LOG_TWO_PI + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/** log(x!) less Stirling's formula, the series of Abramowitz & Stegun 6.1.41. */
function stirlingRest(x: number): number {
  const s = 1 / (x * x);
  const tail = 1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - (s * 691) / 360360));
  return (1 / 12 - s * (1 / 360 - s * tail)) / x;
}

function stirlingError(x: number): number {
  if (x > 16) return stirlingRest(x);
  return logGamma(x + 1) - (x + 0.5) * Math.log(x) + x - HALF_LOG_TWO_PI;
}

/** x log(x / m) + m - x without cancellation where x is near m (Loader 2000). */
function deviance(x: number, m: number): number {
  if (Math.abs(x - m) > 0.1 * (x + m)) return x * Math.log(x / m) + m - x;
  const v = (x - m) / (x + m);
  let sum = (x - m) * v;
  let term = 2 * x * v;
  for (let j = 1; j < 1000; j += 1) {
    term *= v * v;
    const next = sum + term / (2 * j + 1);
    if (next === sum) break;
    sum = next;
  }
  return sum;
}

/** m^x e^-m / Gamma(x + 1) for real x >= 0: the Poisson density in saddle-point form (Loader). */
export function poissonDensity(x: number, mean: number): number {
  if (mean === 0) return x === 0 ? 1 : 0;
  if (x === 0) return Math.exp(-mean);
  if (x < TINY) return Math.exp(-mean);
  return Math.exp(-stirlingError(x) - deviance(x, mean)) / Math.sqrt(2 * Math.PI * x);
}

/** Binomial density for real x in 0..n, with p and its complement q given apart (Loader 2000). */
export function binomialDensity(x: number, n: number, p: number, q: number): number {
  if (p === 0) return x === 0 ? 1 : 0;
  if (q === 0) return x === n ? 1 : 0;
  const rest = n - x;
  if (x === 0) return Math.exp(n * (p < 0.1 ? Math.log1p(-p) : Math.log(q)));
  if (rest === 0) return Math.exp(n * (q < 0.1 ? Math.log1p(-q) : Math.log(p)));
  const error = stirlingError(n) - stirlingError(x) - stirlingError(rest);
  const away = deviance(x, n * p) + deviance(rest, n * q);
  return Math.exp(error - away) * Math.sqrt(n / (2 * Math.PI * x * rest));
}

/** Both regularised incomplete gamma functions, lower P(a, x) and upper Q(a, x). */
export function incompleteGamma(a: number, x: number): { lower: number; upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (x === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 };
  if (x < a + 1) {
    const lower = Math.min(1, poissonDensity(a, x) * gammaSeries(a, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, poissonDensity(a, x) * a * gammaFraction(a, x));
  return { lower: 1 - upper, upper };
}

function gammaSeries(a: number, x: number): number {
  let sum = 1;
  let term = 1;
  for (let n = 1; term > sum * EPSILON; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

function gammaFraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1 / TINY;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < 1e7; i += 1) {
    const an = -i * (i - a);
    b += 2;
    d = 1 / guard(an * d + b);
    c = guard(b + an / c);
    const change = d * c;
    h *= change;
    if (Math.abs(change - 1) < 4 * EPSILON) break;
  }
  return h;
}

function guard(x: number): number {
  return Math.abs(x) < TINY ? TINY : x;
}

/** Regularised incomplete beta I_x(a, b) and its complement, with y = 1 - x given apart. */
export function incompleteBeta(
  a: number,
  b: number,
  x: number,
  y: number,
): { lower: number; upper: number } {
  if (x <= 0) return { lower: 0, upper: 1 };
  if (y <= 0) return { lower: 1, upper: 0 };
  const density = binomialDensity(a, a + b, x, y);
  if (x < (a + 1) / (a + b + 2)) {
    const lower = Math.min(1, ((density * b) / (a + b)) * betaFraction(a, b, x));
    return { lower, upper: 1 - lower };
  }
  const upper = Math.min(1, ((density * a) / (a + b)) * betaFraction(b, a, y));
  return { lower: 1 - upper, upper };
}

/** Lentz's continued fraction (Abramowitz & Stegun 26.5.8). */
function betaFraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / guard(1 - ((a + b) * x) / (a + 1));
  let h = d;
  for (let m = 1; m < 1e6; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / guard(1 + even * d);
    c = guard(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / guard(1 + odd * d);
    c = guard(1 + odd / c);
    const change = d * c;
    h *= change;
    if (Math.abs(change - 1) < 4 * EPSILON) break;
  }
  return h;
}

/** Upper tail of the standard normal distribution, relative accuracy kept far out. */
export function normalTail(z: number): number {
  const { lower, upper } = incompleteGamma(0.5, (z * z) / 2);
  return z >= 0 ? upper / 2 : (1 + lower) / 2;
}

export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** Standard normal quantile: a rational start, then Halley steps on the exact tail. */
export function normalQuantile(p: number): number {
  if (p <= 0) return Number.NEGATIVE_INFINITY;
  if (p >= 1) return Number.POSITIVE_INFINITY;
  if (p > 0.5) return -normalQuantile(1 - p);
  if (p === 0.5) return 0;
  const t = Math.sqrt(-2 * Math.log(p));
  // Abramowitz & Stegun 26.2.23, absolute error below 4.5e-4: enough for a start.
  const top = 2.515517 + t * (0.802853 + t * 0.010328);
  let z = top / (1 + t * (1.432788 + t * (0.189269 + t * 0.001308))) - t;
  for (let i = 0; i < 4; i += 1) {
    const error = (normalTail(-z) - p) / normalDensity(z);
    const step = error / (1 + (z * error) / 2);
    z -= step;
    if (Math.abs(step) < 1e-15 * Math.abs(z)) break;
  }
  return z;
}
