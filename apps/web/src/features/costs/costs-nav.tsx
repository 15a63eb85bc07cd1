import { Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import css from '../../ui/sub-nav.module.css';

interface Props {
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/** Between the screens of costs; the period goes along. */
export function CostsNav({ from, to }: Props) {
  const t = useText();
  const { label, ...names } = t.costs.screens;
  const exact = { activeOptions: { exact: true, includeSearch: false } };
  const search = { from, to };
  return (
    <nav aria-label={label} className={`${css.row ?? ''} tb-screen-only`}>
      <Link to="/costs" search={search} {...exact}>
        {names.report}
      </Link>
      <Link to="/costs/restorations" search={search} {...exact}>
        {names.list}
      </Link>
      <Link to="/costs/waste" search={search} {...exact}>
        {names.waste}
      </Link>
      <Link to="/costs/templates" search={{}} {...exact}>
        {names.templates}
      </Link>
    </nav>
  );
}
