import { useMediaQuery } from '@mantine/hooks';
import { Link, Outlet, useMatches } from '@tanstack/react-router';
import { useText } from '../text/text-provider.js';
import { BusyLine } from '../ui/busy.js';
import { Notices } from '../ui/notices.js';
import { AccountPanel } from './account-panel.js';
import { AccountPopover } from './account-popover.js';
import { Brand } from './brand.js';
import { SCREENS, shown } from './nav.js';
import { isAllowed, useSession } from './session.js';
import css from './shell.module.css';
import { NotAllowedScreen } from './trouble-screens.js';

/** What stands around every screen: the list of screens, who is signed in, the messages. */
export function Shell() {
  const t = useText();
  const wide = useMediaQuery('(min-width: 1100px)', undefined, { getInitialValueInEffect: false });
  return (
    <div className={css.frame}>
      <a className={css.skip} href="#content">
        {t.nav.skip}
      </a>
      <BusyLine />
      {wide ? <WideColumn /> : <TopBar />}
      <main id="content" className={css.content} tabIndex={-1}>
        <AllowedScreen />
      </main>
      {!wide && (
        <div className={`${css.bottom ?? ''} tb-screen-only`}>
          <ScreenLinks />
        </div>
      )}
      <Notices />
    </div>
  );
}

function AllowedScreen() {
  const session = useSession();
  const matches = useMatches();
  const closed = matches.some(
    ({ staticData: { needs } }) => needs && !isAllowed(session, ...needs),
  );
  return closed ? <NotAllowedScreen /> : <Outlet />;
}

function WideColumn() {
  return (
    <header className={`${css.column ?? ''} tb-screen-only`}>
      <Brand />
      <ScreenLinks />
      <AccountPanel />
    </header>
  );
}

function TopBar() {
  const { practice } = useSession();
  return (
    <header className={`${css.top ?? ''} tb-screen-only`}>
      <Brand />
      <span className={css.practice}>{practice.name}</span>
      <AccountPopover />
    </header>
  );
}

function ScreenLinks() {
  const t = useText();
  const screens = shown(SCREENS, useSession());
  return (
    <nav aria-label={t.nav.label} className={css.links}>
      {screens.map(({ id, to }) => (
        <Link key={id} to={to} activeOptions={{ includeSearch: false }}>
          {t.nav[id]}
        </Link>
      ))}
    </nav>
  );
}
