import './bring-words.js';
import './bring-template-words.js';

export { NewTemplateScreen } from './new-template-screen.js';
export { TemplateScreen } from './template-screen.js';
export { TemplatesScreen } from './templates-screen.js';
