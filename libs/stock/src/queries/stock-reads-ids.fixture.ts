import { type Actor, newId } from '#lib/platform';

/** A small book: three layers in five holdings, a write-off that was undone, and a shortfall. */
export const ids = {
  practice: newId(),
  stranger: newId(),
  person: newId(),
  supplier: newId(),
  store: newId(),
  room: newId(),
  paste: newId(),
  wedges: newId(),
  spare: newId(),
  pastePack: newId(),
  wedgePack: newId(),
  delivery: newId(),
  good: newId(),
  old: newId(),
  recalled: newId(),
  layers: [newId(), newId(), newId()] as const,
  holdings: [newId(), newId(), newId(), newId(), newId()] as const,
  writeOff: newId(),
  undo: newId(),
  visit: newId(),
  line: newId(),
  shortfall: newId(),
};

export const actor: Actor = {
  practiceId: ids.practice,
  practiceName: 'North',
  timeZone: 'Europe/Vienna',
  currency: 'EUR',
  toothNotation: 'iso',
  costShareKey: 'equal',
  expiryWarningDays: 60,
  personId: ids.person,
  displayName: 'Mira Holt',
  signInName: 'mira',
  role: 'owner',
};
export const stranger: Actor = { ...actor, practiceId: ids.stranger };
