export const ROLES = ['assistant', 'manager', 'dentist', 'auditor', 'owner'] as const;
export type Role = (typeof ROLES)[number];

export const COST_SHARE_KEYS = ['equal', 'minutes', 'surfaces'] as const;
export type CostShareKey = (typeof COST_SHARE_KEYS)[number];

/** What of a practice every rule may need; read together with whoever is asking. */
export interface PracticeSettings {
  readonly practiceId: string;
  readonly practiceName: string;
  readonly timeZone: string;
  readonly currency: string;
  readonly toothNotation: 'iso' | 'universal';
  readonly costShareKey: CostShareKey;
  readonly expiryWarningDays: number;
}

/** The signed-in person on whose behalf something is done. */
export interface Actor extends PracticeSettings {
  readonly personId: string;
  readonly displayName: string;
  readonly signInName: string;
  readonly role: Role;
}
