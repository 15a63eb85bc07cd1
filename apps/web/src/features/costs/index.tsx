import { Soon } from '../../ui/soon.js';

export function CostsScreen() {
  return <Soon screen="costs" />;
}

export function RestorationScreen() {
  return <Soon screen="costs" />;
}
