import type { en } from './en.js';

/** What every language has to say: the same keys, with the same parameters. */
export type Text = typeof en;
