export { QuotesScreen } from './quotes-screen.js';
