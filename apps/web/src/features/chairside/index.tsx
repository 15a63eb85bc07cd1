export { ChairsideScreen } from './chairside-screen.js';
