import './app/styles.js';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/app.js';
import { loadText, startingLanguage } from './text/language.js';

const language = startingLanguage();
const text = await loadText(language);

const place = document.getElementById('root');
if (!place) throw new Error('The page has no place for the app');
createRoot(place).render(
  <StrictMode>
    <App first={{ language, text }} />
  </StrictMode>,
);
