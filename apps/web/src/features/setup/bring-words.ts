import { bring } from '../../text/language.js';

await bring('setup-catalogue', 'setup-messages', 'setup-people', 'setup-places');
