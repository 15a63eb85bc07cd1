// What a use case needs to forecast, wait for deliveries and replay; the rest is found by file.
export { backtest } from './backtest.js';
export { epochDay, type WorkCalendar } from './calendar.js';
export { NO_SHELF, ShelfGatherer } from './choose-method.js';
export { negativeBinomial, poisson } from './counts.js';
export { certain } from './distribution.js';
export { empirical } from './empirical.js';
export {
  type Accuracy,
  chosen,
  evaluate,
  type Forecaster,
  MONTHLY_PROTOCOL,
  naive,
  seasonalNaive,
  spreadOf,
  steady,
} from './evaluation.js';
export { forecastItem } from './item-forecast.js';
export { leadTime, observeLeadTime, onCalendar } from './lead-time.js';
export { demandOverLead } from './lead-time-demand.js';
export { SERVICE_LEVELS } from './measures.js';
export { candidateMethods } from './methods.js';
export { plainSeries } from './period-series.js';
export {
  croston,
  exponentialSmoothing,
  meanForecast,
  syntetosBoylan,
  tsb,
} from './point-methods.js';
export { type PolicyView, replay } from './replay.js';
export { seededRandom, seedFrom } from './seeded-random.js';
export { seriesFromCsv } from './series-csv.js';
export { type DayForecast, forecastHistory, judgeHistory, judgeSteps } from './shelf-forecast.js';
export { type DayUse, demandHistory } from './usage-history.js';
