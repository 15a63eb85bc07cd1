export { TraceScreen } from './trace-screen.js';
