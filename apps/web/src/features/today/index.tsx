import './bring-words.js';

export { TodayScreen } from './today-screen.js';
