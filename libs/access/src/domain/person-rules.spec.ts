import { describe, expect, it } from '@jest/globals';
import {
  displayNameProblem,
  losesLastOwner,
  normalSignInName,
  passwordProblem,
  signInNameProblem,
} from './person-rules.js';

describe('sign-in names', () => {
  it('are kept in lower case without blanks around', () => {
    expect(normalSignInName('  Mara.Lindt ')).toBe('mara.lindt');
  });

  it.each(['mara', 'mara.lindt', 'm2', 'mara@mill.example', 'a'.repeat(120)])(
    'may be %s',
    (name) => {
      expect(signInNameProblem(name)).toBeUndefined();
    },
  );

  it.each(['', 'm', '.mara', 'mara lindt', 'Mara', 'mära', 'mara\n', 'a'.repeat(121)])(
    'may not be %j',
    (name) => expect(signInNameProblem(name)).toMatch(/^must be/),
  );
});

describe('passwords', () => {
  it('have 10 to 200 characters', () => {
    expect(passwordProblem('123456789', 'mara')).toMatch(/10 to 200/);
    expect(passwordProblem('1234567890', 'mara')).toBeUndefined();
    expect(passwordProblem('x'.repeat(200), 'mara')).toBeUndefined();
    expect(passwordProblem('x'.repeat(201), 'mara')).toMatch(/10 to 200/);
  });

  it('are not the sign-in name', () => {
    expect(passwordProblem('Mara.Lindt.1', 'mara.lindt.1')).toMatch(/differ/);
  });
});

describe('display names', () => {
  it('are not blank', () => {
    expect(displayNameProblem(' ')).toMatch(/^must be/);
    expect(displayNameProblem('Mara Lindt')).toBeUndefined();
    expect(displayNameProblem('x'.repeat(121))).toMatch(/^must be/);
  });
});

describe('the last owner', () => {
  it.each([
    [true, false, 0, true],
    [true, false, 1, false],
    [true, true, 0, false],
    [false, false, 0, false],
  ])('was %s, stays %s, %i others: lost %s', (wasOwner, staysOwner, otherActiveOwners, lost) => {
    expect(losesLastOwner({ wasOwner, staysOwner, otherActiveOwners })).toBe(lost);
  });
});
