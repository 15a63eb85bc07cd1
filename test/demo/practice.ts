import type { Role } from '#lib/platform';

/** An invented practice with invented people; nothing here is a secret. */
export const PRACTICE = {
  name: 'Tarn Lane Demo Practice',
  timeZone: 'Europe/Vienna',
  currency: 'EUR',
  toothNotation: 'iso',
  costShareKey: 'equal',
  expiryWarningDays: 60,
} as const;

export interface DemoPerson {
  readonly displayName: string;
  readonly signInName: string;
  readonly password: string;
  readonly role: Role;
}

/** The owner comes first: who creates the practice owns it. */
export const PEOPLE: readonly DemoPerson[] = [
  {
    displayName: 'Dr Clara Nybrook',
    signInName: 'owner',
    password: 'owner-of-the-book',
    role: 'owner',
  },
  {
    displayName: 'Dr Ilse Varenholt',
    signInName: 'dentist',
    password: 'dentist-at-work',
    role: 'dentist',
  },
  {
    displayName: 'Dr Pavel Ostrander',
    signInName: 'dentist2',
    password: 'dentist-at-work',
    role: 'dentist',
  },
  {
    displayName: 'Mina Quellmann',
    signInName: 'assistant',
    password: 'assistant-at-work',
    role: 'assistant',
  },
  {
    displayName: 'Tobias Rennick',
    signInName: 'manager',
    password: 'manager-at-work',
    role: 'manager',
  },
  {
    displayName: 'Ruth Amselgruber',
    signInName: 'auditor',
    password: 'auditor-at-work',
    role: 'auditor',
  },
];

export const DENTISTS = ['dentist', 'dentist2'] as const;
export type DentistName = (typeof DENTISTS)[number];

export const PLACES = {
  store: { name: 'Store', kind: 'store', parent: null },
  fridge: { name: 'Fridge', kind: 'fridge', parent: 'store' },
  room1: { name: 'Room 1', kind: 'room', parent: 'store' },
  room2: { name: 'Room 2', kind: 'room', parent: 'store' },
} as const;
export type PlaceKey = keyof typeof PLACES;
export const ROOMS = ['room1', 'room2'] as const;
export type RoomKey = (typeof ROOMS)[number];

export interface DemoSupplier {
  readonly name: string;
  readonly email: string;
  /** The weekday on which the practice orders here; 1 is Monday. */
  readonly ordersOn: number;
  readonly leadDays: readonly [from: number, to: number];
  readonly freight: readonly [from: number, to: number];
  /** What each price round adds, in percent. */
  readonly rises: readonly number[];
}

export const SUPPLIERS = {
  ostermill: {
    name: 'Ostermill Dental Goods',
    email: 'orders@ostermill.example',
    ordersOn: 1,
    leadDays: [2, 5],
    freight: [6.9, 9.9],
    rises: [2.4, 1.8, 3.1, 2.2],
  },
  quillmere: {
    name: 'Quillmere Trading',
    email: 'desk@quillmere.example',
    ordersOn: 2,
    leadDays: [3, 7],
    freight: [0, 12.5],
    rises: [3.5, 2.9, 4.2],
  },
  tavenstone: {
    name: 'Tavenstone Materials',
    email: 'sales@tavenstone.example',
    ordersOn: 3,
    leadDays: [2, 6],
    freight: [7.5, 7.5],
    rises: [1.9, 4.6, 2.5],
  },
  brackwater: {
    name: 'Brackwater Clinic Supply',
    email: 'office@brackwater.example',
    ordersOn: 4,
    leadDays: [1, 4],
    freight: [4.9, 8.4],
    rises: [2.1, 2.7, 1.5, 3.3],
  },
} as const satisfies Record<string, DemoSupplier>;
export type SupplierKey = keyof typeof SUPPLIERS;
