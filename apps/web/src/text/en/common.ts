export const app = {
  name: 'Traybook',
  claim: 'The book of what goes on the tray.',
  caution:
    'Figures are planning aids. Instructions for use, local rules and licensed practice come first.',
};

export const nav = {
  label: 'Screens',
  skip: 'Skip to the content',
  today: 'Today',
  chairside: 'Chairside',
  visits: 'Visits',
  shelves: 'Shelves',
  ordering: 'Ordering',
  orderingScreens: {
    now: 'To order',
    items: 'All items',
    orders: 'Orders',
    suppliers: 'Suppliers',
    whatIf: 'What if',
    proof: 'Proof',
  },
  costs: 'Costs',
  quotes: 'Quotes',
  trace: 'Trace',
  setup: 'Set-up',
  setupSections: { goods: 'What you buy', work: 'What you do', practice: 'Your practice' },
  setupScreens: {
    consumables: 'Consumables',
    suppliers: 'Suppliers',
    locations: 'Locations',
    ordering: 'Ordering',
    templates: 'Templates',
    fees: 'Fees',
    plans: 'Plans',
    balances: 'What is left',
    rates: 'Chair cost',
    people: 'People',
    practice: 'Practice',
    messages: 'Messages',
    files: 'Files',
  },
  soon: 'This screen is being built.',
};

export const account = {
  title: 'Signed in',
  open: 'Account and settings',
  language: 'Language',
  theme: 'Appearance',
  themes: { auto: 'As device', light: 'Light', dark: 'Dark' },
  signOut: 'Sign out',
  roles: {
    assistant: 'Assistant',
    manager: 'Manager',
    dentist: 'Dentist',
    auditor: 'Auditor',
    owner: 'Owner',
  },
};

export const units = {
  g: { one: 'g', other: 'g' },
  mL: { one: 'mL', other: 'mL' },
  cm: { one: 'cm', other: 'cm' },
  piece: { one: 'piece', other: 'pieces' },
  use: { one: 'use', other: 'uses' },
  days: { one: 'day', other: 'days' },
  packs: { one: 'pack', other: 'packs' },
};

export const ui = {
  busy: 'One moment …',
  retry: 'Try again',
  cancel: 'Cancel',
  save: 'Save',
  close: 'Close',
  showPassword: 'Show or hide the password',
  back: 'Back',
  print: 'Print',
  all: 'All',
  none: 'none',
  notStated: 'not stated',
  search: 'Search',
  clear: 'Clear',
  required: 'Please fill this in',
  decimal: 'Please write a number, e.g. 0.06',
  choose: 'Please choose',
  showing: (rows: string) => `${rows} rows`,
  firstPage: 'First page',
  nextPage: 'Next page',
  sortedBy: (column: string) => `Sort by ${column}`,
  emptyList: 'Nothing here yet',
  emptySearch: 'Nothing matches',
  emptySearchHint: 'Take a filter away, or search for less.',
  reversal: {
    title: 'Reverse this?',
    explain: 'Nothing is erased. A counter-entry is booked that names this one.',
    reason: 'Why',
    confirm: 'Reverse',
    keep: 'Leave as it is',
  },
};

export const problems = {
  title: 'That did not work',
  fields: 'Please look at the fields that are marked.',
  dismiss: 'Dismiss this message',
  unreachable: 'The service cannot be reached. Check the network, then try again.',
  notFound: 'There is nothing at this address.',
  notFoundHint: 'It may have been typed wrongly, or the thing is in another practice.',
  notAllowed: 'Your role may not open this screen.',
  notAllowedHint: 'Ask an owner of the practice if you need it.',
  crash: 'This screen has stopped.',
  crashHint: 'Nothing that was booked is lost. Load the page again.',
  home: 'To the start',
  /** Sentences of our own for stable problem codes; the service's sentence stands for the others. */
  codes: {} as Readonly<Record<string, string>>,
  /** The service's words about one field, as a sentence beside it. */
  fieldWords: (message: string) => message.charAt(0).toUpperCase() + message.slice(1),
  requestId: (id: string) => `Request ${id}`,
};
