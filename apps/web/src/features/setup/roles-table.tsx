import { VisuallyHidden } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import type { Shape } from '../../api/client.js';
import { useText } from '../../text/text-provider.js';
import { Loaded } from '../../ui/loaded.js';
import { Section } from '../../ui/section.js';
import { useScrollStop } from '../../ui/use-scroll-stop.js';
import { rolesQuery } from './api/list-roles.js';
import css from './roles.module.css';

/** What each role may do, as the service itself decides it. */
export function RolesTable() {
  const w = useText().setupPeople;
  const roles = useQuery(rolesQuery);
  return (
    <div className={css.roles}>
      <Section title={w.roles} hint={w.rolesHint}>
        <Loaded query={roles}>{({ items }) => <Table roles={items} />}</Loaded>
      </Section>
    </div>
  );
}

interface Props {
  readonly roles: readonly Shape<'RoleDto'>[];
}

function Table({ roles }: Props) {
  const t = useText();
  const w = t.setupPeople;
  const scroller = useScrollStop();
  const words = new Map(
    roles.flatMap(({ may }) => may.map((each) => [each.permission, each.words])),
  );
  const order = Object.keys(w.may) as (keyof typeof w.may)[];
  const permissions = [...words.keys()].sort((a, b) => order.indexOf(a) - order.indexOf(b));
  return (
    <section ref={scroller} className={css.rolesScroller} aria-label={w.roles}>
      <table className={css.rolesTable} aria-label={w.roles}>
        <thead>
          <tr>
            <th scope="col">{w.mayHead}</th>
            {roles.map(({ role }) => (
              <th key={role} scope="col">
                {t.account.roles[role]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {permissions.map((permission) => (
            <tr key={permission}>
              <th scope="row">{w.may[permission] ?? words.get(permission)}</th>
              {roles.map(({ role, may }) => (
                <td key={role}>
                  <Answer yes={may.some((each) => each.permission === permission)} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Answer({ yes }: { readonly yes: boolean }) {
  const w = useText().setupPeople;
  return (
    <>
      {yes ? (
        <svg viewBox="0 0 12 12" aria-hidden="true" className={css.yes}>
          <path d="M2.5 6.5l2.5 2.5 4.5-6" />
        </svg>
      ) : (
        <span aria-hidden="true" className={css.no}>
          –
        </span>
      )}
      <VisuallyHidden>{yes ? w.yes : w.no}</VisuallyHidden>
    </>
  );
}
