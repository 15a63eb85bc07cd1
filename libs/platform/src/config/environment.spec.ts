import { describe, expect, it } from '@jest/globals';
import { readEnvironment } from './environment.js';
import { StartupError } from './startup-error.js';

describe('readEnvironment', () => {
  it('needs nothing', () => {
    expect(readEnvironment({})).toEqual({
      databaseUrl: undefined,
      host: '127.0.0.1',
      port: 3000,
      dataDir: undefined,
      logLevel: 'warn',
    });
  });

  it('takes what is set', () => {
    const set = readEnvironment({
      DATABASE_URL: 'postgresql://someone:pw@db:5432/book',
      HOST: '0.0.0.0',
      PORT: '0',
      TRAYBOOK_DATA: ' /srv/book ',
      TRAYBOOK_LOG: 'info',
    });
    expect(set).toEqual({
      databaseUrl: 'postgresql://someone:pw@db:5432/book',
      host: '0.0.0.0',
      port: 0,
      dataDir: '/srv/book',
      logLevel: 'info',
    });
  });

  it.each([
    ['PORT', 'abc'],
    ['PORT', '-1'],
    ['PORT', '65536'],
    ['PORT', '3e3'],
    ['HOST', ''],
    ['TRAYBOOK_LOG', 'Info'],
    ['TRAYBOOK_DATA', '  '],
    ['DATABASE_URL', ''],
    ['DATABASE_URL', 'localhost:5432/book'],
    ['DATABASE_URL', 'mysql://someone:hidden@db/book'],
    ['DATABASE_URL', 'postgres://someone:hidden@db'],
  ])('refuses %s=%j in a sentence that names it and shows no password', (name, value) => {
    const read = () => readEnvironment({ [name]: value });
    expect(read).toThrow(StartupError);
    expect(read).toThrow(name);
    expect(read).not.toThrow('hidden');
  });
});
