import { Button } from '@mantine/core';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import css from './alert-group.module.css';
import { AlertRow } from './alert-row.js';
import type { AlertGroup } from './filter-alerts.js';
import { TONES } from './tones.js';

const route = getRouteApi('/in/today');

/** So many of each kind on the screen that shows all kinds; more of one on its own. */
const FEW = 12;
const MANY = 100;

interface Props {
  readonly group: AlertGroup;
  readonly asOf: string;
}

export function AlertGroupSection({ group: { kind, alerts }, asOf }: Props) {
  const t = useText();
  const search = route.useSearch();
  const alone = search.kind === kind;
  const limit = alone ? Number(search.show ?? MANY) : FEW;
  return (
    <Section
      title={t.today.kinds[kind]}
      hint={t.today.why[kind]}
      aside={<StatusMark tone={TONES[kind]}>{t.today.count(alerts.length)}</StatusMark>}
    >
      <ul className={css.list}>
        {alerts.slice(0, limit).map((alert) => (
          <AlertRow key={alert.id} alert={alert} asOf={asOf} />
        ))}
      </ul>
      {alerts.length > limit && (alone ? <MoreButton shown={limit} /> : <AllLink kind={kind} />)}
    </Section>
  );
}

function MoreButton({ shown }: { readonly shown: number }) {
  const t = useText();
  const navigate = route.useNavigate();
  const show = String(shown + MANY);
  const more = () =>
    void navigate({ search: (old) => ({ ...old, show }), replace: true, resetScroll: false });
  return (
    <Button variant="default" className="tb-screen-only" mt="md" onClick={more}>
      {t.today.more}
    </Button>
  );
}

function AllLink({ kind }: { readonly kind: AlertGroup['kind'] }) {
  const t = useText();
  return (
    <p className={`${css.all ?? ''} tb-screen-only`}>
      <Link to="/today" search={(old) => ({ ...old, kind })}>
        {t.today.allOfKind}
      </Link>
    </p>
  );
}
