import { Link } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import css from '../../../ui/sub-nav.module.css';

const EXACT = { exact: true, includeSearch: false } as const;

/** The ways to look at the shelves, and their labels; stock is the way in, so only it is matched to the letter. */
export function ShelvesNav() {
  const { scan, shelves } = useText();
  const { areas } = shelves;
  const may = useMay();
  return (
    <nav aria-label={areas.label} className={`${css.row ?? ''} tb-screen-only`}>
      <Link to="/shelves" activeOptions={EXACT}>
        {areas.stock}
      </Link>
      {may('deliveries.read') && (
        <Link to="/shelves/deliveries" activeOptions={{ includeSearch: false }}>
          {areas.deliveries}
        </Link>
      )}
      <Link to="/shelves/movements" activeOptions={{ includeSearch: false }}>
        {areas.movements}
      </Link>
      <Link to="/shelves/labels" activeOptions={{ includeSearch: false }}>
        {scan.labels.title}
      </Link>
    </nav>
  );
}
