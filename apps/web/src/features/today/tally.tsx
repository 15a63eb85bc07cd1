import { Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import type { Alert } from './api/list-alerts.js';
import { groupByKind } from './filter-alerts.js';
import css from './tally.module.css';
import { TONES } from './tones.js';

/** How much of each kind there is; each leads to its own. */
export function Tally({ alerts }: { readonly alerts: readonly Alert[] }) {
  const t = useText();
  return (
    <ul className={css.tally} aria-label={t.today.count(alerts.length)}>
      {groupByKind(alerts).map((group) => (
        <li key={group.kind} data-tone={TONES[group.kind]}>
          <Link
            to="/today"
            search={(old) => ({ ...old, kind: group.kind })}
            activeOptions={{ exact: true }}
          >
            <span className={css.count}>{group.alerts.length}</span>
            <span className={css.kind}>{t.today.kinds[group.kind]}</span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
