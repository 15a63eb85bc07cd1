import './bring-words.js';

export { ShelvesScreen } from './shelves-screen.js';
