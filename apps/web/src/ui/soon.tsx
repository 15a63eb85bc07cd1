import { useText } from '../text/text-provider.js';
import { EmptyState } from './empty-state.js';
import { PageHead } from './page-head.js';

interface Props {
  readonly screen: 'chairside' | 'visits' | 'shelves' | 'costs' | 'trace' | 'setup';
}

/** Stands in for a screen that is not there yet. */
export function Soon({ screen }: Props) {
  const t = useText();
  return (
    <>
      <PageHead title={t.nav[screen]} />
      <EmptyState title={t.nav.soon} />
    </>
  );
}
