/** How the expected use per period is found. */
export type MethodName =
  | 'mean'
  | 'exponential smoothing'
  | 'TSB'
  | 'Croston'
  | 'Syntetos-Boylan'
  | 'Shale-Boylan-Johnston'
  | 'seasonal'
  | 'compound'
  | 'resampling';

export interface Method {
  readonly name: MethodName;
  /** Weight of a new level or size. */
  readonly alpha: number;
  /** Weight of a new interval or probability. */
  readonly beta: number;
}

export function methodKey(method: Method): string {
  const { name, alpha, beta } = method;
  if (alpha === 0) return name;
  return beta === 0 ? `${name} ${alpha}` : `${name} ${alpha}/${beta}`;
}

const smoothing = (alpha: number): Method => ({ name: 'exponential smoothing', alpha, beta: 0 });
const tsb = (beta: number): Method => ({ name: 'TSB', alpha: 0.1, beta });
const interval = (name: MethodName): Method => ({ name, alpha: 0.1, beta: 0.1 });

export type PeriodLength = 'day' | 'week' | 'month';

const WEIGHTS: Record<PeriodLength, { level: readonly number[]; probability: readonly number[] }> =
  {
    day: { level: [0.01, 0.03, 0.08], probability: [0.01, 0.04] },
    week: { level: [0.05, 0.1, 0.2], probability: [0.05, 0.1] },
    month: { level: [0.05, 0.1, 0.15, 0.2, 0.3], probability: [0.05, 0.1, 0.2] },
  };

/** What is tried for an item; the first one is the plain default for short histories. */
export function candidateMethods(period: PeriodLength): readonly Method[] {
  const { level, probability } = WEIGHTS[period];
  const [first = 0.1, second = 0.1, ...rest] = level;
  const compoundWeight = probability[0] ?? 0.1;
  return [
    smoothing(second),
    smoothing(first),
    ...rest.map(smoothing),
    ...probability.map(tsb),
    { name: 'mean', alpha: 0, beta: 0 },
    interval('Croston'),
    interval('Syntetos-Boylan'),
    interval('Shale-Boylan-Johnston'),
    { name: 'seasonal', alpha: 0, beta: 0 },
    { name: 'compound', alpha: 0.1, beta: compoundWeight },
    { name: 'resampling', alpha: 0, beta: 0 },
  ];
}

/** Methods that forecast a died-out item as dying; Croston and its kin hold on to the last rate. */
export function followsDeath(method: Method): boolean {
  return method.name === 'exponential smoothing' || method.name === 'TSB';
}
