import { Outlet } from '@tanstack/react-router';
import { SETUP_SCREENS, shown } from '../../app/nav.js';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { SubNav } from '../../ui/sub-nav.js';

/** The set-up screens share one row of links. */
export function SetupFrame() {
  const t = useText();
  const screens = shown(SETUP_SCREENS, useSession());
  return (
    <>
      <SubNav
        label={t.nav.setup}
        links={screens.map(({ id, to }) => ({ to, label: t.nav.setupScreens[id] }))}
      />
      <Outlet />
    </>
  );
}
