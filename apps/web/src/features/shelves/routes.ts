import { createRoute, lazyRouteComponent } from '@tanstack/react-router';
import { choice, day, id, searchOf, text, whole } from '../../app/search.js';
import { needs, shellRoute } from '../../app/shell-route.js';

/** What can be done with one holding (and, for a count, with all of a consumable or a place). */
const HOLDING_ACTIONS = ['open', 'move', 'write-off', 'return', 'hold', 'count'] as const;

const shelvesRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/shelves',
  validateSearch: searchOf({
    q: text(120),
    category: text(80),
    shade: text(80),
    locationId: id,
    sort: choice('consumable', 'expiry', 'value'),
    cursor: text(2000),
    /** The consumable that is looked at; `after` pages its holdings. */
    consumableId: id,
    after: text(2000),
    holdingId: id,
    do: choice(...HOLDING_ACTIONS),
    /** Of a count: its differences are looked at before they are booked. */
    step: choice('review'),
    /** The movement that is about to be reversed. */
    undo: id,
  }),
  ...needs('stock.read'),
  component: lazyRouteComponent(() => import('./index.js'), 'ShelvesScreen'),
});

const movementsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/shelves/movements',
  validateSearch: searchOf({
    layerId: id,
    lotId: id,
    consumableId: id,
    visitId: id,
    account: choice('supplier', 'location', 'visit', 'waste', 'count', 'return'),
    from: day,
    to: day,
    cursor: text(2000),
    undo: id,
  }),
  ...needs('stock.read'),
  component: lazyRouteComponent(() => import('./booking.js'), 'MovementsScreen'),
});

const deliveriesRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/shelves/deliveries',
  validateSearch: searchOf({ supplierId: id, from: day, to: day, q: text(80), cursor: text(2000) }),
  ...needs('deliveries.read'),
  component: lazyRouteComponent(() => import('./booking.js'), 'DeliveriesScreen'),
});

const receiveRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/shelves/deliveries/new',
  validateSearch: searchOf({ consumableId: id, packs: whole(1, 100_000), orderId: id }),
  ...needs('deliveries.book'),
  component: lazyRouteComponent(() => import('./booking.js'), 'ReceiveScreen'),
});

const labelsRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/shelves/labels',
  validateSearch: searchOf({ holdingId: id, locationId: id, start: whole(1, 24) }),
  ...needs('stock.read'),
  component: lazyRouteComponent(() => import('./booking.js'), 'LabelsScreen'),
});

const deliveryRoute = createRoute({
  getParentRoute: () => shellRoute,
  path: '/shelves/deliveries/$deliveryId',
  validateSearch: searchOf({
    do: choice('reverse', 'correct', 'invoice'),
    /** Which line is corrected. */
    line: whole(1, 10_000),
  }),
  ...needs('deliveries.read'),
  component: lazyRouteComponent(() => import('./booking.js'), 'DeliveryScreen'),
});

export const shelvesRoutes = [
  shelvesRoute,
  movementsRoute,
  deliveriesRoute,
  receiveRoute,
  labelsRoute,
  deliveryRoute,
] as const;
