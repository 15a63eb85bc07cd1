import { Soon } from '../../ui/soon.js';

export function TodayScreen() {
  return <Soon screen="setup" />;
}
