import { negativeBinomial, poisson } from '../forecast/counts.js';
import { certain } from '../forecast/distribution.js';
import type { Demand, Distribution } from './demand.js';

// Plain demands for the tests of this folder.

/** The same Poisson use every day. */
export function poissonDemand(perDay: number): Demand {
  return steady((days) => poisson(perDay * days));
}

/** Lumpy use every day: variance `ratio` (above 1) times the mean. */
export function lumpyDemand(perDay: number, ratio: number): Demand {
  return steady((days) => {
    const mean = perDay * days;
    return mean === 0 ? certain(0) : negativeBinomial(mean, mean * ratio);
  });
}

/** A demand that only depends on the length of the span. */
export function steady(over: (days: number) => Distribution): Demand {
  return { use: (from, to) => over(to - from) };
}
