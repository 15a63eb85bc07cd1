import { Outlet } from '@tanstack/react-router';
import { useText } from '../text/text-provider.js';
import { SectionNav } from '../ui/section-nav.js';
import { SETUP_SCREENS, SETUP_SECTIONS, shown } from './nav.js';
import { useMay, useSession } from './session.js';

/** The set-up screens share their links, by what is set up. */
export function SetupFrame() {
  const t = useText();
  const may = useMay();
  const screens = shown(SETUP_SCREENS, useSession());
  const more = [
    ...(may('tokens.own') ? [{ to: '/setup/tokens' as const, label: t.setup.more.tokens }] : []),
    ...(may('audit.read') ? [{ to: '/setup/audit' as const, label: t.setup.more.audit }] : []),
  ];
  const sections = SETUP_SECTIONS.map((section) => ({
    name: t.nav.setupSections[section],
    links: [
      ...screens
        .filter((screen) => screen.in === section)
        .map(({ id, to }) => ({ to, label: t.nav.setupScreens[id] })),
      ...(section === 'practice' ? more : []),
    ],
  }));
  return (
    <>
      <SectionNav label={t.nav.setup} sections={sections} />
      <Outlet />
    </>
  );
}
