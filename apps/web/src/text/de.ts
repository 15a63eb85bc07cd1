import { firstStart, signIn } from './de/access.js';
import { account, app, nav, problems, ui, units } from './de/common.js';
import { costs } from './de/costs.js';
import { trace } from './de/trace.js';
import { today } from './de/today.js';
import type { Text } from './text.js';

/** German. A screen's words are in the file that is named after it. */
export const de: Text = { app, nav, account, units, ui, problems, signIn, firstStart, today, costs, trace };
