import { describe, expect, it } from '@jest/globals';
import { HttpException } from '@nestjs/common';
import { defineRefusals, refuse, unknownReference } from './refused.js';
import { isRetryable, toRefused } from './to-refused.js';

function database(code: string): Error {
  return Object.assign(new Error('from the database'), { code, constraint: 'people_sign_in_name' });
}

describe('toRefused', () => {
  it('leaves a refusal as it is', () => {
    const refusal = unknownReference('lines[0].consumableId', 'consumable');
    expect(toRefused(refusal)).toBe(refusal);
    expect(refusal.fields).toEqual([
      { field: 'lines[0].consumableId', message: 'names no consumable of this practice' },
    ]);
  });

  it.each([
    ['23505', 409, 'already_exists'],
    ['23503', 422, 'unknown_reference'],
    ['23514', 400, 'invalid_request'],
    ['22003', 400, 'invalid_request'],
    ['40001', 503, 'busy'],
    ['53300', 503, 'busy'],
  ])('turns the database error %s into %i', (code, status, name) => {
    const wrapped = Object.assign(new Error('from TypeORM'), { driverError: database(code) });
    for (const error of [database(code), wrapped]) {
      expect(toRefused(error)).toMatchObject({ code: name, kind: { status } });
    }
  });

  it('keeps the status of what the framework refuses', () => {
    expect(toRefused(new HttpException('No such path', 404))).toMatchObject({ code: 'not_found' });
    const tooLarge = Object.assign(new Error('Body too large'), { statusCode: 413 });
    expect(toRefused(tooLarge)).toMatchObject({ code: 'body_too_large' });
  });

  it('knows no refusal for a bug of ours', () => {
    expect(toRefused(new TypeError('x is not a function'))).toBeUndefined();
    expect(toRefused(database('42P01'))).toBeUndefined();
    expect(toRefused(new HttpException('Broken', 500))).toBeUndefined();
  });

  it('repeats only what another attempt can mend', () => {
    expect(['40001', '40P01', '23505', '57014'].filter((c) => isRetryable(database(c)))).toEqual([
      '40001',
      '40P01',
    ]);
  });
});

describe('defineRefusals', () => {
  it('throws at a code that is not in the table', () => {
    const table: Record<string, { status: 409; title: string }> = {};
    expect(() => defineRefusals(table)('gone', 'It is gone.')).toThrow('No refusal is called gone');
    expect(refuse('busy', 'Later.').message).toBe('Later.');
  });
});
