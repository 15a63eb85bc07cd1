import './bring-words.js';

export { FilesScreen } from './files-screen.js';
