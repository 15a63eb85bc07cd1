import type { Permission, Session } from '../api/client.js';
import { isAllowed } from './session.js';

/** The screens, in the order in which they stand; shown to whoever has any of the permissions. */
export const SCREENS = [
  { id: 'today', to: '/today', needs: ['alerts.read'] },
  { id: 'chairside', to: '/chairside', needs: ['visits.post'] },
  { id: 'visits', to: '/visits', needs: ['visits.read'] },
  { id: 'shelves', to: '/shelves', needs: ['stock.read'] },
  { id: 'ordering', to: '/ordering', needs: ['costs.read'] },
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

/** What somebody sets up: what is bought, what is done with it, or the practice itself. */
export const SETUP_SECTIONS = ['goods', 'work', 'practice'] as const;

type SetupSection = (typeof SETUP_SECTIONS)[number];

export const SETUP_SCREENS = [
  { id: 'consumables', in: 'goods', to: '/setup/consumables', needs: ['catalogue.read'] },
  { id: 'suppliers', in: 'goods', to: '/setup/suppliers', needs: ['catalogue.read'] },
  { id: 'locations', in: 'goods', to: '/setup/locations', needs: ['catalogue.read'] },
  { id: 'ordering', in: 'goods', to: '/setup/ordering', needs: ['orders.read'] },
  { id: 'templates', in: 'work', to: '/setup/templates', needs: ['templates.read'] },
  { id: 'fees', in: 'work', to: '/setup/fees', needs: ['pricing.read'] },
  { id: 'plans', in: 'work', to: '/setup/plans', needs: ['pricing.read'] },
  { id: 'balances', in: 'work', to: '/setup/balances', needs: ['pricing.read'] },
  { id: 'rates', in: 'work', to: '/setup/rates', needs: ['costs.read'] },
  { id: 'people', in: 'practice', to: '/setup/people', needs: ['people.manage'] },
  { id: 'practice', in: 'practice', to: '/setup/practice', needs: ['practice.manage'] },
  { id: 'messages', in: 'practice', to: '/setup/messages', needs: ['practice.manage'] },
  { id: 'files', in: 'practice', to: '/setup/files', needs: ['files.import'] },
] as const satisfies readonly {
  readonly id: string;
  readonly in: SetupSection;
  readonly to: string;
  readonly needs: readonly Permission[];
}[];

/** The areas of ordering; the first is the way in, so only it is matched to the letter. */
export const ORDERING_SCREENS = [
  { id: 'now', to: '/ordering', needs: ['costs.read'] },
  { id: 'items', to: '/ordering/items', needs: ['costs.read'] },
  { id: 'orders', to: '/ordering/orders', needs: ['orders.read'] },
  { id: 'suppliers', to: '/ordering/suppliers', needs: ['costs.read'] },
  { id: 'whatIf', to: '/ordering/what-if', needs: ['costs.read'] },
  { id: 'proof', to: '/ordering/proof', needs: ['costs.read'] },
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
