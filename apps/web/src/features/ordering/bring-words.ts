import { bring } from '../../text/language.js';

await bring('ordering', 'ordering-items', 'ordering-settings');
