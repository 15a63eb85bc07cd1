import { getRouteApi, Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import css from './alert-group.module.css';
import type { AlertList } from './api/list-alerts.js';

const route = getRouteApi('/in/today');

/** The way to what was put off, and back. */
export function PutOffLink({ list }: { readonly list: AlertList }) {
  const t = useText();
  const search = route.useSearch();
  const { snoozed } = search;
  if (snoozed === undefined && list.snoozed === 0) return null;
  const words = t.today.snooze;
  return (
    <p className={`${css.off ?? ''} tb-screen-only`}>
      {snoozed === undefined ? words.count(list.snoozed) : words.onlyThese}{' '}
      <Link to="/today" search={{ ...search, snoozed: snoozed === undefined ? 'true' : undefined }}>
        {snoozed === undefined ? words.showThem : words.back}
      </Link>
    </p>
  );
}
