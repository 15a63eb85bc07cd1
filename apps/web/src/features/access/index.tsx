import './bring-words.js';

export { FirstStartScreen } from './first-start-screen.js';
export { SignInScreen } from './sign-in-screen.js';
