import { bring } from '../../text/language.js';

await bring('visits', 'visits-charges', 'trace', 'shelves-ledger');
