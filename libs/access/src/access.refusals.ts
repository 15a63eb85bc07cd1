import { defineRefusals } from '#lib/platform';

export const refuseAccess = defineRefusals({
  not_signed_in: { status: 401, title: 'Please sign in' },
  wrong_credentials: { status: 401, title: 'The name or the password is not right' },
  forbidden: { status: 403, title: 'Your role does not allow this' },
  foreign_origin: { status: 403, title: 'The request came from another site' },
  too_many_attempts: { status: 429, title: 'Too many failed sign-ins' },
  first_start_closed: { status: 403, title: 'This link can no longer be used' },
  sign_in_name_taken: { status: 409, title: 'This sign-in name is taken' },
  last_owner: { status: 409, title: 'The practice needs an owner' },
});
