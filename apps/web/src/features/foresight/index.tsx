import './bring-words.js';

export { ProofScreen } from './proof/proof-screen.js';
export { SuppliersScreen } from './suppliers/suppliers-screen.js';
export { WhatIfScreen } from './what-if/what-if-screen.js';
