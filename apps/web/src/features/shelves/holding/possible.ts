import type { Permission } from '../../../api/client.js';
import type { Holding } from '../api/list-holdings.js';

export const ACTIONS = ['open', 'move', 'write-off', 'return', 'count', 'hold'] as const;
export type Action = (typeof ACTIONS)[number];

const NEEDS: Readonly<Record<Action, Permission>> = {
  open: 'stock.handle',
  move: 'stock.handle',
  'write-off': 'stock.handle',
  count: 'stock.handle',
  return: 'deliveries.book',
  hold: 'lots.hold',
};

/** A sealed container that is used more than once, of a lot that may be used, can be opened. */
function canOpen({ dispensing, openedOn, status }: Holding): boolean {
  return dispensing === 'multi-use' && openedOn === null && status === 'usable';
}

/** What a person may do with a holding, as it is now. */
export function possibleActions(
  holding: Holding,
  may: (permission: Permission) => boolean,
): Action[] {
  return ACTIONS.filter((action) => may(NEEDS[action]) && (action !== 'open' || canOpen(holding)));
}

/** The one that the state of the holding asks for. */
export function nextAction(holding: Holding, possible: readonly Action[]): Action | undefined {
  const wanted: Readonly<Record<Holding['status'], readonly Action[]>> = {
    usable: ['open', 'move'],
    expired: ['write-off'],
    recalled: ['return', 'write-off'],
    quarantined: ['hold'],
    'not yet received': [],
    'opened later': [],
  };
  return wanted[holding.status].find((action) => possible.includes(action));
}
