/**
 * What a piece of work read before it had its locks is no longer so: it is done again from the start, in
 * a new transaction, as after a deadlock.
 */
export class StartAgain extends Error {}
