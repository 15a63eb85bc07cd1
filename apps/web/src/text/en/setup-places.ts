/** Suppliers, locations, the practice and access tokens. */
export const setupSuppliers = {
  title: 'Suppliers',
  lead: 'Who delivers. A delivery names its supplier, and so does the way something is bought.',
  add: 'Add a supplier',
  addTitle: 'New supplier',
  columns: { name: 'Name', email: 'Orders go to', state: 'State' },
  email: 'Address for orders',
  emailHint: 'An e-mail address. May be left empty.',
  language: 'Language of orders',
  languageHint: 'In which the order is written',
  languages: { en: 'English', de: 'German' },
  customerNumber: 'Our customer number',
  badEmail: 'This does not look like an e-mail address',
  empty: 'No supplier yet',
  emptyHint: 'Add the first one, then its deliveries can be booked.',
};

export const setupLocations = {
  title: 'Locations',
  lead: 'Where things lie. Indented below a place is what draws from it.',
  rule: 'When a room has run out, it draws from the place above it, and then from the one above that. So what is used in a room that draws from the store is taken from the store when the room is empty.',
  add: 'Add a location',
  addTitle: 'New location',
  addBelow: (name: string) => `Add below ${name}`,
  below: 'Add below',
  kind: 'What it is',
  kinds: { store: 'Store', fridge: 'Fridge', room: 'Room', drawer: 'Drawer' },
  parent: 'Draws from',
  parentHint: 'Where it takes things from when it has none left.',
  noParent: 'nowhere else',
  drawsFrom: (name: string) => `draws from ${name}`,
  showAll: 'Show what is no longer in use',
  empty: 'No location yet',
  emptyHint: 'Begin with the store. Then add the rooms that draw from it.',
  tree: 'Locations, as they draw from each other',
  holdsStock: 'Things still lie here. Move them to another location first.',
};

export const setupPractice = {
  title: 'Practice',
  lead: (currency: string) =>
    `Settings that hold for everybody. Every price in the book is in ${currency}; that stays.`,
  name: 'Name of the practice',
  timeZone: 'Time zone',
  notation: 'How teeth are written',
  notations: { iso: 'ISO two-digit (11 to 48)', universal: 'Universal (1 to 32)' },
  warning: 'Warn before expiry (days)',
  warningHint: 'Today lists a lot this many days before its last day.',
  sharing: 'How shared cost is split',
  sharingHint:
    'Bibs, gloves and what else a visit uses once are shared by its restorations. This says by what.',
  sharedBy: 'Shared',
  keys: {
    equal: 'In equal parts',
    minutes: 'By chair time',
    surfaces: 'By number of surfaces',
  },
  example: (total: string) =>
    `For example, one visit with two fillings shares ${total} of bibs and gloves:`,
  exampleRows: {
    first: 'Filling on 3 surfaces, 40 minutes',
    second: 'Filling on 1 surface, 20 minutes',
  },
  exampleHead: 'Restoration',
  save: 'Save the settings',
  saved: 'The settings are saved.',
};

export const setupTokens = {
  title: 'Access tokens',
  lead: 'A token lets a program of yours, such as a label printer, use the book as you. It may do what your role may do.',
  add: 'Make a token',
  addTitle: 'New token',
  name: 'What it is for',
  namePlaceholder: 'Label printer at the front desk',
  expires: 'Last day on which it works',
  expiresHint: 'Without a day it works until you revoke it.',
  past: 'Must not be in the past',
  columns: { name: 'For', created: 'Made', expires: 'Works until', state: 'State' },
  untilRevoked: 'you revoke it',
  states: { works: 'Works', expired: 'Has expired', revoked: 'Revoked' },
  revoke: 'Revoke',
  revokeOf: (name: string) => `Revoke ${name}`,
  revokeTitle: 'Revoke this token?',
  revokeWhat: (name: string) =>
    `Whatever uses “${name}” is locked out at once. This cannot be taken back; make a new token instead.`,
  keep: 'Keep it',
  revoked: (name: string) => `“${name}” is revoked.`,
  secretTitle: 'Copy the secret now',
  secretHint:
    'It is shown this once and kept nowhere. Whoever has it can do what you can do, so treat it like a password.',
  copy: 'Copy',
  copied: 'Copied',
  understood: 'I have copied it',
  empty: 'No token yet',
  emptyHint: 'Make one when a program needs to read or write the book for you.',
};
