export const signIn = {
  title: 'Sign in',
  name: 'Sign-in name',
  password: 'Password',
  submit: 'Sign in',
  wrong: 'The name or the password is not right.',
  throttled: (minutes: number) =>
    minutes <= 1
      ? 'Too many tries. This name is closed for about a minute.'
      : `Too many tries. This name is closed for ${minutes} minutes.`,
  ended: 'Your session has ended. Sign in to go on where you were.',
};

export const firstStart = {
  title: 'Open the book',
  lead: 'This book is still empty. Say which practice it belongs to and who owns it.',
  practice: 'The practice',
  practiceName: 'Name of the practice',
  timeZone: 'Time zone',
  timeZoneHint: 'It decides which day is today, for expiry and for the ledger.',
  currency: 'Currency',
  currencyHint: 'Every price in the book is in it. It cannot be changed later.',
  notation: 'How teeth are written',
  notations: { iso: 'ISO two-digit (11 to 48)', universal: 'Universal (1 to 32)' },
  owner: 'The owner',
  ownerHint: 'May do everything, and adds the others.',
  ownerName: 'Name',
  signInName: 'Sign-in name',
  signInNameHint: 'Small letters, digits and . _ @ + -',
  password: 'Password',
  passwordHint: (least: number) => `At least ${least} characters. A few words are best.`,
  tooShort: (least: number) => `Must be at least ${least} characters`,
  submit: 'Open the book',
  badLink: 'This link does not open the book any more.',
  badLinkHint:
    'It was used, or is too old, or the book is open already. The service prints a new one when it starts with an empty book.',
  toSignIn: 'To the sign-in',
};
