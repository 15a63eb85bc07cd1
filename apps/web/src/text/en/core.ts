/** What every screen needs, in one piece. */
export * from './common.js';
export * from './scan.js';
export * from './setup.js';
