import { bring } from '../../text/language.js';

await bring('costs', 'costs-reports', 'trace', 'visits');
