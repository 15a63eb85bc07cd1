export { openBrowser, type PageOptions, type TestBrowser } from './browser.js';
export {
  eventually,
  expectAccessible,
  expectAccessibleLooks,
  filled,
  shot,
  signIn,
  signInByHand,
} from './steps.js';
export { FixedClock, openBusyBook, TODAY } from './today-book.js';
export { startWebService, type WebService } from './web-service.js';
