import { bring } from '../../text/language.js';

await bring('fees', 'fee-plans');
