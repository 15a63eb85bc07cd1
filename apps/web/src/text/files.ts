import type { Text } from './text.js';

/** One file in every language; the languages have to say the same. */
const both = <M extends Partial<Text>>(en: () => Promise<M>, de: () => Promise<M>) => ({ en, de });

/** The files of words. Each is loaded when a screen first needs it, in the language that is spoken. */
export const FILES = {
  core: both(
    () => import('./en/core.js'),
    () => import('./de/core.js'),
  ),
  access: both(
    () => import('./en/access.js'),
    () => import('./de/access.js'),
  ),
  booked: both(
    () => import('./en/booked.js'),
    () => import('./de/booked.js'),
  ),
  chairside: both(
    () => import('./en/chairside.js'),
    () => import('./de/chairside.js'),
  ),
  costs: both(
    () => import('./en/costs.js'),
    () => import('./de/costs.js'),
  ),
  'costs-reports': both(
    () => import('./en/costs-reports.js'),
    () => import('./de/costs-reports.js'),
  ),
  'fee-plans': both(
    () => import('./en/fee-plans.js'),
    () => import('./de/fee-plans.js'),
  ),
  fees: both(
    () => import('./en/fees.js'),
    () => import('./de/fees.js'),
  ),
  foresight: both(
    () => import('./en/foresight.js'),
    () => import('./de/foresight.js'),
  ),
  files: both(
    () => import('./en/files.js'),
    () => import('./de/files.js'),
  ),
  ordering: both(
    () => import('./en/ordering.js'),
    () => import('./de/ordering.js'),
  ),
  'ordering-items': both(
    () => import('./en/ordering-items.js'),
    () => import('./de/ordering-items.js'),
  ),
  'ordering-settings': both(
    () => import('./en/ordering-settings.js'),
    () => import('./de/ordering-settings.js'),
  ),
  orders: both(
    () => import('./en/orders.js'),
    () => import('./de/orders.js'),
  ),
  quotes: both(
    () => import('./en/quotes.js'),
    () => import('./de/quotes.js'),
  ),
  'setup-catalogue': both(
    () => import('./en/setup-catalogue.js'),
    () => import('./de/setup-catalogue.js'),
  ),
  'setup-messages': both(
    () => import('./en/setup-messages.js'),
    () => import('./de/setup-messages.js'),
  ),
  'setup-people': both(
    () => import('./en/setup-people.js'),
    () => import('./de/setup-people.js'),
  ),
  'setup-places': both(
    () => import('./en/setup-places.js'),
    () => import('./de/setup-places.js'),
  ),
  'setup-templates': both(
    () => import('./en/setup-templates.js'),
    () => import('./de/setup-templates.js'),
  ),
  shelves: both(
    () => import('./en/shelves.js'),
    () => import('./de/shelves.js'),
  ),
  'shelves-ledger': both(
    () => import('./en/shelves-ledger.js'),
    () => import('./de/shelves-ledger.js'),
  ),
  'shelves-more': both(
    () => import('./en/shelves-more.js'),
    () => import('./de/shelves-more.js'),
  ),
  today: both(
    () => import('./en/today.js'),
    () => import('./de/today.js'),
  ),
  trace: both(
    () => import('./en/trace.js'),
    () => import('./de/trace.js'),
  ),
  visits: both(
    () => import('./en/visits.js'),
    () => import('./de/visits.js'),
  ),
  'visits-charges': both(
    () => import('./en/visits-charges.js'),
    () => import('./de/visits-charges.js'),
  ),
};

export type WordsFile = keyof typeof FILES;
