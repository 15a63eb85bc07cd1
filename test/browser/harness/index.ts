import { jest } from '@jest/globals';

// Chromium on a busy machine may miss a click; npm test names every test that needed this.
jest.retryTimes(1, { logErrorsBeforeRetry: true });

export { openBrowser, type PageOptions, type TestBrowser } from './browser.js';
export {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  filled,
  shot,
  signIn,
} from './steps.js';
export { FixedClock, openBusyBook, TODAY } from './today-book.js';
export { startWebService, type WebService } from './web-service.js';
