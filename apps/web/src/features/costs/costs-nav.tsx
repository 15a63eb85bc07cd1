import { useText } from '../../text/text-provider.js';
import { SectionNav } from '../../ui/section-nav.js';

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
  const sections = SECTIONS.map((section) => ({
    name: t.costs.sections[section.id],
    links: section.screens.map((screen) => ({
      to: screen.to,
      label: t.costs.screens[screen.id],
      search: screen.id === 'templates' ? {} : { from, to },
      exact: true,
    })),
  }));
  return <SectionNav label={t.costs.screens.label} sections={sections} />;
}
