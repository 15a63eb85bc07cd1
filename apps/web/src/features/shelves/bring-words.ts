import { bring } from '../../text/language.js';

await bring('shelves', 'shelves-ledger');
