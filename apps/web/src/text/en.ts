import { firstStart, signIn } from './en/access.js';
import { account, app, nav, problems, ui, units } from './en/common.js';
import { costs } from './en/costs.js';
import { trace } from './en/trace.js';
import { today } from './en/today.js';

/** English. A screen's words are in the file that is named after it. */
export const en = { app, nav, account, units, ui, problems, signIn, firstStart, today, costs, trace };
