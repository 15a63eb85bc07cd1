import { Soon } from '../../ui/soon.js';

export function ChairsideScreen() {
  return <Soon screen="chairside" />;
}
