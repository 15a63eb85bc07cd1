import { bring } from '../../text/language.js';

await bring('orders');
