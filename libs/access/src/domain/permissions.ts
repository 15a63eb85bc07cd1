/** What may be done in the book, each with the words in which it is explained to people. */
export const PERMISSION_WORDS = {
  'catalogue.read': 'see consumables, presentations, suppliers and locations',
  'catalogue.write': 'add and change consumables, presentations, suppliers and locations',
  'stock.read': 'see what is on hand and how it moved',
  'stock.handle': 'move, open, count and write off stock',
  'lots.hold': 'quarantine, recall or release a lot',
  'deliveries.read': 'see deliveries',
  'deliveries.book': 'take in deliveries and send goods back',
  'templates.read': 'see procedure templates',
  'templates.write': 'add and change procedure templates',
  'visits.read': 'see visits and what they used',
  'visits.post': 'record visits',
  'visits.reverse': 'reverse a recorded visit',
  'costs.read': 'see costs and cost reports',
  'pricing.read': 'see fees and plans, and make quotes',
  'pricing.write': 'add and change fees and plans',
  'balances.write': "enter what is left of a patient's plan",
  'charges.record': 'record what was asked for a restoration, and who pays it',
  'alerts.read': 'see alerts and what to order',
  'alerts.snooze': 'put an alert off until a day, with a reason',
  'ordering.manage': 'set how orders are planned, and mark one-off use',
  'orders.read': 'see orders to suppliers and what came of them',
  'orders.write': 'prepare orders, send them, chase them and close them',
  'orders.approve': 'approve orders within the limits of the practice',
  'orders.exceed': 'approve orders above the limit or the budget of the month',
  'trace.read': 'trace a lot or a visit through the book',
  'people.manage': 'add people and change what they may do',
  'practice.manage': 'change the settings of the practice',
  'audit.read': 'read the audit trail',
  'files.import': 'bring lists in from files, and take the book out as files',
  'tokens.own': 'make and revoke personal access tokens',
} as const;

export type Permission = keyof typeof PERMISSION_WORDS;

type RoleName = 'assistant' | 'manager' | 'dentist' | 'auditor' | 'owner';

export const PERMISSIONS = Object.keys(PERMISSION_WORDS) as readonly Permission[];

const ASSISTANT: readonly Permission[] = [
  'catalogue.read',
  'stock.read',
  'stock.handle',
  'deliveries.read',
  'templates.read',
  'visits.read',
  'visits.post',
  'alerts.read',
  'tokens.own',
];

/** The whole of who may do what. Nothing else in the service decides by role. */
export const PERMISSIONS_BY_ROLE: Readonly<Record<RoleName, readonly Permission[]>> = {
  assistant: ASSISTANT,
  manager: [
    ...ASSISTANT,
    'catalogue.write',
    'deliveries.book',
    'lots.hold',
    'visits.reverse',
    'costs.read',
    'pricing.read',
    'balances.write',
    'charges.record',
    'alerts.snooze',
    'ordering.manage',
    'orders.read',
    'orders.write',
    'orders.approve',
    'trace.read',
    'files.import',
  ],
  dentist: [
    'catalogue.read',
    'stock.read',
    'templates.read',
    'templates.write',
    'visits.read',
    'visits.post',
    'visits.reverse',
    'costs.read',
    'pricing.read',
    'pricing.write',
    'balances.write',
    'charges.record',
    'alerts.read',
    'alerts.snooze',
    'orders.read',
    'trace.read',
    'lots.hold',
    'deliveries.read',
    'tokens.own',
  ],
  auditor: [
    'catalogue.read',
    'stock.read',
    'deliveries.read',
    'templates.read',
    'visits.read',
    'costs.read',
    'pricing.read',
    'alerts.read',
    'orders.read',
    'trace.read',
    'audit.read',
    'tokens.own',
  ],
  owner: PERMISSIONS,
};

export function isAllowed(role: RoleName, permission: Permission): boolean {
  return PERMISSIONS_BY_ROLE[role].includes(permission);
}
