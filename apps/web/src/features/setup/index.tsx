import { Soon } from '../../ui/soon.js';

export function ConsumablesScreen() {
  return <Soon screen="setup" />;
}

export function SuppliersScreen() {
  return <Soon screen="setup" />;
}

export function LocationsScreen() {
  return <Soon screen="setup" />;
}

export function TemplatesScreen() {
  return <Soon screen="setup" />;
}

export function PeopleScreen() {
  return <Soon screen="setup" />;
}

export function PracticeScreen() {
  return <Soon screen="setup" />;
}

export function ConsumableScreen() {
  return <Soon screen="setup" />;
}

export function TemplateScreen() {
  return <Soon screen="setup" />;
}

export { SetupFrame } from './setup-frame.js';
