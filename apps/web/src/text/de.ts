import { firstStart, signIn } from './de/access.js';
import { booked } from './de/booked.js';
import { chairside } from './de/chairside.js';
import { account, app, nav, problems, ui, units } from './de/common.js';
import { costs } from './de/costs.js';
import { costReports } from './de/costs-reports.js';
import { plans } from './de/fee-plans.js';
import { balances, fees, rates } from './de/fees.js';
import { files } from './de/files.js';
import { foresight } from './de/foresight.js';
import { ordering } from './de/ordering.js';
import { orderingItem, orderingItems } from './de/ordering-items.js';
import { orderingSettings } from './de/ordering-settings.js';
import { orders } from './de/orders.js';
import { quotes } from './de/quotes.js';
import { scan } from './de/scan.js';
import { setup } from './de/setup.js';
import { setupCatalogue, setupKits } from './de/setup-catalogue.js';
import { setupMessages } from './de/setup-messages.js';
import { setupAudit, setupPeople } from './de/setup-people.js';
import { setupLocations, setupPractice, setupSuppliers, setupTokens } from './de/setup-places.js';
import { setupExample, setupTemplates } from './de/setup-templates.js';
import { counting, shelves } from './de/shelves.js';
import { deliveries, layer, movements, receive } from './de/shelves-ledger.js';
import { deliveryMore, receiveMore } from './de/shelves-more.js';
import { today } from './de/today.js';
import { trace } from './de/trace.js';
import { visits } from './de/visits.js';
import { visitCharges } from './de/visits-charges.js';
import type { Text } from './text.js';

/** German. A screen's words are in the file that is named after it. */
export const de: Text = {
  app,
  nav,
  account,
  units,
  ui,
  problems,
  signIn,
  firstStart,
  today,
  booked,
  chairside,
  visits,
  visitCharges,
  costs,
  costReports,
  files,
  foresight,
  ordering,
  orderingItem,
  orderingItems,
  orderingSettings,
  orders,
  quotes,
  scan,
  trace,
  shelves,
  counting,
  movements,
  layer,
  deliveries,
  receive,
  receiveMore,
  deliveryMore,
  setup,
  setupLocations,
  setupPractice,
  setupSuppliers,
  setupTokens,
  setupCatalogue,
  setupKits,
  setupAudit,
  setupMessages,
  setupPeople,
  setupExample,
  setupTemplates,
  fees,
  plans,
  balances,
  rates,
};
