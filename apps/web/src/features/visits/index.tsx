import './bring-words.js';

export { VisitScreen } from './visit-screen.js';
export { VisitsScreen } from './visits-screen.js';
