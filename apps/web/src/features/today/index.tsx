export { TodayScreen } from './today-screen.js';
