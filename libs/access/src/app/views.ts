import type { Actor, CostShareKey, Role } from '#lib/platform';
import type { PersonEntity } from '../db/person.entity.js';

export interface PersonView {
  readonly id: string;
  readonly displayName: string;
  readonly signInName: string;
  readonly role: Role;
  readonly active: boolean;
}

export function personView(row: PersonEntity): PersonView {
  const { id, displayName, signInName, role, active } = row;
  return { id, displayName, signInName, role, active };
}

export interface PracticeView {
  readonly id: string;
  readonly name: string;
  readonly timeZone: string;
  readonly currency: string;
  readonly toothNotation: 'iso' | 'universal';
  readonly costShareKey: CostShareKey;
  readonly expiryWarningDays: number;
}

export function practiceOf(actor: Actor): PracticeView {
  return {
    id: actor.practiceId,
    name: actor.practiceName,
    timeZone: actor.timeZone,
    currency: actor.currency,
    toothNotation: actor.toothNotation,
    costShareKey: actor.costShareKey,
    expiryWarningDays: actor.expiryWarningDays,
  };
}
