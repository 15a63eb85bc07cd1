import { Link } from '@tanstack/react-router';
import { useId } from 'react';
import { useText } from '../../text/text-provider.js';
import css from './costs-nav.module.css';

/** By the question that somebody comes with. */
const SECTIONS = [
  {
    id: 'cost',
    screens: [
      { id: 'report', to: '/costs' },
      { id: 'list', to: '/costs/restorations' },
      { id: 'variances', to: '/costs/variances' },
      { id: 'chairTime', to: '/costs/chair-time' },
    ],
  },
  {
    id: 'earned',
    screens: [
      { id: 'contributions', to: '/costs/contributions' },
      { id: 'supplies', to: '/costs/supplies' },
    ],
  },
  {
    id: 'change',
    screens: [
      { id: 'habits', to: '/costs/habits' },
      { id: 'waste', to: '/costs/waste' },
      { id: 'prices', to: '/costs/prices' },
      { id: 'templates', to: '/costs/templates' },
    ],
  },
] as const;

interface Props {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** Between the screens of costs; the period goes along. */
export function CostsNav({ from, to }: Props) {
  const t = useText();
  return (
    <nav aria-label={t.costs.screens.label} className={`${css.nav ?? ''} tb-screen-only`}>
      {SECTIONS.map((section) => (
        <Part key={section.id} section={section} from={from} to={to} />
      ))}
    </nav>
  );
}

function Part({ section, from, to }: Props & { readonly section: (typeof SECTIONS)[number] }) {
  const t = useText();
  const name = useId();
  return (
    <div className={css.part}>
      <p id={name} className={css.name}>
        {t.costs.sections[section.id]}
      </p>
      <ul aria-labelledby={name}>
        {section.screens.map((screen) => (
          <li key={screen.id}>
            <Link
              to={screen.to}
              search={screen.id === 'templates' ? {} : { from, to }}
              activeOptions={{ exact: true, includeSearch: false }}
            >
              {t.costs.screens[screen.id]}
            </Link>
          </li>
        ))}
      </ul>
    </div>
  );
}
