import type { Permission } from '../../api/client.js';
import type { Text } from '../../text/text.js';
import type { Alert } from './api/list-alerts.js';

interface Words {
  readonly label: keyof Text['today']['actions'];
  readonly needs: Permission;
}

type Way = Words &
  (
    | {
        readonly to: '/shelves';
        readonly search: {
          readonly consumableId?: string;
          readonly holdingId?: string;
          readonly do?: 'move' | 'write-off' | 'return' | 'hold' | 'count';
        };
      }
    | {
        readonly to: '/shelves/deliveries/new';
        readonly search: { readonly consumableId: string; readonly packs?: string };
      }
    | {
        readonly to: '/ordering/orders/$orderId';
        readonly params: { readonly orderId: string };
      }
    | { readonly to: '/ordering' }
    | {
        readonly to: '/ordering/items/$consumableId';
        readonly params: { readonly consumableId: string };
      }
    | {
        readonly to: '/setup/consumables/$consumableId';
        readonly params: { readonly consumableId: string };
      }
  );

/** What settles an alert, the best way first; a person takes the first that they may go. */
export function waysOf(alert: Alert): Way[] {
  const consumableId = alert.consumable.id;
  const look: Way = {
    label: 'look',
    needs: 'stock.read',
    to: '/shelves',
    search: { consumableId },
  };
  return [...bestWays(alert), look];
}

function bestWays(alert: Alert): Way[] {
  const { kind, lot, holdingId, order } = alert;
  const consumableId = alert.consumable.id;
  const here = holdingId === null ? { consumableId } : { holdingId };
  const on = (label: Words['label'], needs: Permission, todo: Todo): Way => ({
    ...{ label, needs, to: '/shelves', search: { ...here, do: todo } },
  });
  switch (kind) {
    case 'recalled lot on hand':
      return lot?.status === 'recalled'
        ? [on('sendBack', 'deliveries.book', 'return')]
        : [on('decide', 'lots.hold', 'hold')];
    case 'expired on shelf':
    case 'opened too long':
      return [on('writeOff', 'stock.handle', 'write-off')];
    case 'expires within N days':
      return [on('move', 'stock.handle', 'move')];
    case 'open shortfall':
      return [receive(alert), on('count', 'stock.handle', 'count')];
    case 'overdue order':
      return order === null
        ? []
        : [
            {
              ...{ label: 'order', needs: 'orders.read', params: { orderId: order.id } },
              to: '/ordering/orders/$orderId',
            },
          ];
    case 'runs out before delivery':
      return [{ label: 'toOrder', needs: 'costs.read', to: '/ordering' }];
    case 'below reorder point':
      if (alert.level?.heldBack) {
        const to = '/ordering/items/$consumableId';
        return [{ label: 'heldBack', needs: 'costs.read', to, params: { consumableId } }];
      }
      return alert.figures.some(({ name }) => name === 'suggested packs')
        ? [receive(alert)]
        : [
            {
              ...{ label: 'buying', needs: 'catalogue.write', params: { consumableId } },
              to: '/setup/consumables/$consumableId',
            },
          ];
  }
}

type Todo = 'move' | 'write-off' | 'return' | 'hold' | 'count';

function receive({ consumable, figures }: Alert): Way {
  const packs = figures.find(({ name }) => name === 'suggested packs')?.value;
  const search = { consumableId: consumable.id, ...(packs === undefined ? {} : { packs }) };
  return { label: 'receive', needs: 'deliveries.book', to: '/shelves/deliveries/new', search };
}
