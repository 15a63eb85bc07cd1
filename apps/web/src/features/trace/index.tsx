import './bring-words.js';

export { TraceScreen } from './trace-screen.js';
