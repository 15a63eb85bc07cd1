import { types } from 'pg';

// A calendar day is a text, not an instant: pg would make it midnight of the server's own zone.
const DATE = 1082;
types.setTypeParser(DATE, (text: string) => text);
