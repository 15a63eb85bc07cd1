import type { Permission, Session } from '../api/client.js';
import { isAllowed } from './session.js';

/** The screens, in the order in which they stand; shown to whoever has any of the permissions. */
export const SCREENS = [
  { id: 'today', to: '/today', needs: ['alerts.read'] },
  { id: 'chairside', to: '/chairside', needs: ['visits.post'] },
  { id: 'visits', to: '/visits', needs: ['visits.read'] },
  { id: 'shelves', to: '/shelves', needs: ['stock.read'] },
  { id: 'costs', to: '/costs', needs: ['costs.read'] },
  { id: 'quotes', to: '/quotes', needs: ['pricing.read'] },
  { id: 'trace', to: '/trace', needs: ['trace.read'] },
  {
    id: 'setup',
    to: '/setup',
    needs: ['catalogue.write', 'templates.write', 'pricing.write', 'people.manage', 'audit.read'],
  },
] as const satisfies readonly {
  readonly id: string;
  readonly to: string;
  readonly needs: readonly Permission[];
}[];

export const SETUP_SCREENS = [
  { id: 'consumables', to: '/setup/consumables', needs: ['catalogue.read'] },
  { id: 'suppliers', to: '/setup/suppliers', needs: ['catalogue.read'] },
  { id: 'locations', to: '/setup/locations', needs: ['catalogue.read'] },
  { id: 'templates', to: '/setup/templates', needs: ['templates.read'] },
  { id: 'fees', to: '/setup/fees', needs: ['pricing.read'] },
  { id: 'plans', to: '/setup/plans', needs: ['pricing.read'] },
  { id: 'balances', to: '/setup/balances', needs: ['pricing.read'] },
  { id: 'rates', to: '/setup/rates', needs: ['costs.read'] },
  { id: 'people', to: '/setup/people', needs: ['people.manage'] },
  { id: 'practice', to: '/setup/practice', needs: ['practice.manage'] },
  { id: 'messages', to: '/setup/messages', needs: ['practice.manage'] },
] as const satisfies readonly {
  readonly id: string;
  readonly to: string;
  readonly needs: readonly Permission[];
}[];

export function shown<S extends { readonly needs: readonly Permission[] }>(
  screens: readonly S[],
  session: Session,
): S[] {
  return screens.filter((screen) => isAllowed(session, ...screen.needs));
}

/** Where a role's work is. */
const LANDING = {
  assistant: '/chairside',
  manager: '/today',
  dentist: '/costs',
  auditor: '/trace',
  owner: '/today',
} as const satisfies Record<Session['person']['role'], string>;

export function landingOf(session: Session): (typeof LANDING)[keyof typeof LANDING] {
  return LANDING[session.person.role];
}
