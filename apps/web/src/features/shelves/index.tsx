import { Soon } from '../../ui/soon.js';

export function ShelvesScreen() {
  return <Soon screen="shelves" />;
}

export function MovementsScreen() {
  return <Soon screen="shelves" />;
}

export function DeliveriesScreen() {
  return <Soon screen="shelves" />;
}

export function ReceiveScreen() {
  return <Soon screen="shelves" />;
}

export function DeliveryScreen() {
  return <Soon screen="shelves" />;
}
