import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import type { AuditEntry } from './api/list-audit-entries.js';
import { type AuditChange, auditChanges } from './audit-changes.js';
import css from './parts.module.css';
import { RowButton } from './row-button.js';

const route = getRouteApi('/in/setup/audit');

/** So many lines are shown at once; a new template has many fields. */
const FEW = 4;

interface Props {
  readonly entry: AuditEntry;
  readonly what: string;
}

export function AuditDetails({ entry, what }: Props) {
  const w = useText().setupAudit;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const changes = auditChanges(entry.details);
  const open = search.entry === entry.id || changes.length <= FEW;
  const narrow = () =>
    void navigate({
      search: (old) => ({ ...old, subject: entry.subjectId, cursor: undefined }),
    });
  return (
    <div className={css.details}>
      {changes.length > 0 && <Changes changes={open ? changes : changes.slice(0, FEW)} />}
      <div className={css.detailActions}>
        {!open && (
          <RowButton
            label={w.detailsOf(what)}
            onClick={() =>
              void navigate({
                search: (old) => ({ ...old, entry: entry.id }),
                replace: true,
                resetScroll: false,
              })
            }
          >
            {w.details}
          </RowButton>
        )}
        {search.subject === undefined && !entry.action.startsWith('session.') && (
          <RowButton label={w.onlySubjectOf(what)} onClick={narrow}>
            {w.onlySubject}
          </RowButton>
        )}
      </div>
    </div>
  );
}

function Changes({ changes }: { readonly changes: readonly AuditChange[] }) {
  const w = useText().setupAudit;
  return (
    <dl className={css.changes}>
      {changes.map(({ field, from, to }) => (
        <div key={field}>
          <dt>{w.fields[field] ?? field}</dt>
          <dd>
            {from !== undefined && (
              <>
                <Value value={from} />
                {' → '}
              </>
            )}
            <Value value={to} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** Whatever an entry holds, as briefly as it can be said. */
function Value({ value }: { readonly value: unknown }) {
  const t = useText();
  const w = t.setupAudit;
  const { number } = useFormat();
  if (value === null || value === undefined) return <span className={css.quiet}>{w.empty}</span>;
  if (typeof value === 'boolean') return value ? w.yes : w.no;
  if (Array.isArray(value)) return number(String(value.length));
  if (typeof value === 'object') return Object.values(value).map(String).join(' ');
  return String(value);
}
