import { firstStart, signIn } from './en/access.js';
import { chairside } from './en/chairside.js';
import { account, app, nav, problems, ui, units } from './en/common.js';
import { costs } from './en/costs.js';
import { costReports } from './en/costs-reports.js';
import { plans } from './en/fee-plans.js';
import { balances, fees, rates } from './en/fees.js';
import { quotes } from './en/quotes.js';
import { scan } from './en/scan.js';
import { setup } from './en/setup.js';
import { setupCatalogue } from './en/setup-catalogue.js';
import { setupMessages } from './en/setup-messages.js';
import { setupAudit, setupPeople } from './en/setup-people.js';
import { setupLocations, setupPractice, setupSuppliers, setupTokens } from './en/setup-places.js';
import { setupExample, setupTemplates } from './en/setup-templates.js';
import { counting, shelves } from './en/shelves.js';
import { deliveries, layer, movements, receive } from './en/shelves-ledger.js';
import { today } from './en/today.js';
import { trace } from './en/trace.js';
import { visits } from './en/visits.js';

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
  chairside,
  visits,
  costs,
  costReports,
  quotes,
  scan,
  trace,
  shelves,
  counting,
  movements,
  layer,
  deliveries,
  receive,
  setup,
  setupLocations,
  setupPractice,
  setupSuppliers,
  setupTokens,
  setupCatalogue,
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
