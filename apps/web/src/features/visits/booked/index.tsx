import './bring-words.js';

export { BookedScreen } from './booked-screen.js';
