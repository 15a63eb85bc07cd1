import { Outlet } from '@tanstack/react-router';
import { useText } from '../text/text-provider.js';
import { SubNav } from '../ui/sub-nav.js';
import { SETUP_SCREENS, shown } from './nav.js';
import { useMay, useSession } from './session.js';

/** The set-up screens share one row of links. */
export function SetupFrame() {
  const t = useText();
  const may = useMay();
  const screens = shown(SETUP_SCREENS, useSession());
  const links = [
    ...screens.map(({ id, to }) => ({ to, label: t.nav.setupScreens[id] })),
    ...(may('tokens.own') ? [{ to: '/setup/tokens' as const, label: t.setup.more.tokens }] : []),
    ...(may('audit.read') ? [{ to: '/setup/audit' as const, label: t.setup.more.audit }] : []),
  ];
  return (
    <>
      <SubNav label={t.nav.setup} links={links} />
      <Outlet />
    </>
  );
}
