import './bring-words.js';

export { ChairsideScreen } from './chairside-screen.js';
