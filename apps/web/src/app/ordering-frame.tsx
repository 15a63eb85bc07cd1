import { Outlet } from '@tanstack/react-router';
import { useText } from '../text/text-provider.js';
import { SubNav } from '../ui/sub-nav.js';
import { ORDERING_SCREENS, shown } from './nav.js';
import { useSession } from './session.js';

/** The screens of ordering share one row of links. */
export function OrderingFrame() {
  const t = useText();
  const links = shown(ORDERING_SCREENS, useSession()).map(({ id, to }) => ({
    to,
    label: t.nav.orderingScreens[id],
    exact: to === '/ordering',
  }));
  return (
    <>
      <SubNav label={t.nav.ordering} links={links} />
      <Outlet />
    </>
  );
}
