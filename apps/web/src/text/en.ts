import { firstStart, signIn } from './en/access.js';
import { booked } from './en/booked.js';
import { chairside } from './en/chairside.js';
import { account, app, nav, problems, ui, units } from './en/common.js';
import { costs } from './en/costs.js';
import { costReports } from './en/costs-reports.js';
import { plans } from './en/fee-plans.js';
import { balances, fees, rates } from './en/fees.js';
import { files } from './en/files.js';
import { foresight } from './en/foresight.js';
import { ordering } from './en/ordering.js';
import { orderingItem, orderingItems } from './en/ordering-items.js';
import { orderingSettings } from './en/ordering-settings.js';
import { orders } from './en/orders.js';
import { quotes } from './en/quotes.js';
import { scan } from './en/scan.js';
import { setup } from './en/setup.js';
import { setupCatalogue, setupKits } from './en/setup-catalogue.js';
import { setupMessages } from './en/setup-messages.js';
import { setupAudit, setupPeople } from './en/setup-people.js';
import { setupLocations, setupPractice, setupSuppliers, setupTokens } from './en/setup-places.js';
import { setupExample, setupTemplates } from './en/setup-templates.js';
import { counting, shelves } from './en/shelves.js';
import { deliveries, layer, movements, receive } from './en/shelves-ledger.js';
import { deliveryMore, receiveMore } from './en/shelves-more.js';
import { today } from './en/today.js';
import { trace } from './en/trace.js';
import { visits } from './en/visits.js';
import { visitCharges } from './en/visits-charges.js';

/** English. A screen's words are in the file that is named after it. */
export const en = {
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
