import type { Text } from '../../text/text.js';

export const SHORTEST_PASSWORD = 10;
export const ROLES = ['assistant', 'manager', 'dentist', 'auditor', 'owner'] as const;

/** What is plainly wrong with a password; the rest is the service's to judge. */
export function passwordError(password: string, signInName: string, t: Text): string | undefined {
  if (password === '') return t.ui.required;
  if (password.length < SHORTEST_PASSWORD) return t.setupPeople.tooShort(SHORTEST_PASSWORD);
  const same = password.toLowerCase() === signInName.trim().toLowerCase();
  return same ? t.setupPeople.sameAsName : undefined;
}
