import { Soon } from '../../ui/soon.js';

export function TraceScreen() {
  return <Soon screen="trace" />;
}
