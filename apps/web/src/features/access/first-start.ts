import type { Text } from '../../text/text.js';
import type { FieldErrors } from '../../ui/use-form.js';
import { ownTimeZone } from './places.js';

export const SHORTEST_PASSWORD = 10;

/** Named by the paths by which the service knows them. */
export const EMPTY_BOOK = {
  'practice.name': '',
  'practice.timeZone': ownTimeZone(),
  'practice.currency': '',
  'practice.toothNotation': 'iso' as 'iso' | 'universal',
  'owner.displayName': '',
  'owner.signInName': '',
  'owner.password': '',
};

export type FirstStartValues = typeof EMPTY_BOOK;

/** What is plainly missing; the rest is the service's to judge. */
export function checkFirstStart(values: FirstStartValues, t: Text): FieldErrors {
  const errors: Record<string, string> = {};
  for (const [name, value] of Object.entries(values)) {
    if (value.trim() === '') errors[name] = t.ui.required;
  }
  const password = values['owner.password'];
  if (password !== '' && password.length < SHORTEST_PASSWORD) {
    errors['owner.password'] = t.firstStart.tooShort(SHORTEST_PASSWORD);
  }
  return errors;
}
