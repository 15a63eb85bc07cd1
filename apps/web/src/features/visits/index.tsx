import { Soon } from '../../ui/soon.js';

export function VisitsScreen() {
  return <Soon screen="visits" />;
}

export function VisitScreen() {
  return <Soon screen="visits" />;
}
