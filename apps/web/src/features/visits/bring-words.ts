import { bring } from '../../text/language.js';

await bring('visits', 'trace', 'shelves-ledger');
