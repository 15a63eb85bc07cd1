import './bring-words.js';

export { QuotesScreen } from './quotes-screen.js';
