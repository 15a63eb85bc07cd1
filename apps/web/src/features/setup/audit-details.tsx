import { getRouteApi } from '@tanstack/react-router';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { RowButton } from '../../ui/row-button.js';
import type { AuditEntry } from './api/list-audit-entries.js';
import own from './audit.module.css';
import { type AuditChange, auditChanges } from './audit-changes.js';
import css from './parts.module.css';

const route = getRouteApi('/in/setup/audit');

/** So many lines are shown at once of what was changed, and of what is new. */
const FEW = { changed: 4, added: 1 } as const;

interface Props {
  readonly entry: AuditEntry;
  readonly what: string;
}

export function AuditDetails({ entry, what }: Props) {
  const w = useText().setupAudit;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const changes = auditChanges(entry.details);
  const few = changes.some(({ from }) => from !== undefined) ? FEW.changed : FEW.added;
  const open = search.entry === entry.id || changes.length <= few;
  const narrow = () =>
    void navigate({
      search: (old) => ({ ...old, subject: entry.subjectId, cursor: undefined }),
    });
  return (
    <div className={own.details}>
      {changes.length > 0 && <Changes changes={open ? changes : changes.slice(0, few)} />}
      <div className={own.detailActions}>
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
    <dl className={own.changes}>
      {changes.map(({ field, from, to }) => (
        <div key={field}>
          <dt>{w.fields[field] ?? field}</dt>
          <dd>
            {from !== undefined && (
              <>
                <Value field={field} value={from} />
                {' → '}
              </>
            )}
            <Value field={field} value={to} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** Whatever an entry holds, as briefly as it can be said. */
function Value({ field, value }: { readonly field: string; readonly value: unknown }) {
  const t = useText();
  const w = t.setupAudit;
  const { number } = useFormat();
  if (value === null || value === undefined) return <span className={css.quiet}>{w.empty}</span>;
  if (typeof value === 'boolean') return value ? w.yes : w.no;
  if (Array.isArray(value)) return number(String(value.length));
  if (typeof value === 'object') return Object.values(value).map(String).join(' ');
  const words: Readonly<Record<string, Readonly<Record<string, string>>>> = {
    role: t.account.roles,
    dispensing: t.setupCatalogue.dispensings,
    stockUnit: t.setupCatalogue.units,
    kind: t.setupLocations.kinds,
    toothNotation: t.setupPractice.notations,
    costShareKey: t.setupPractice.keys,
  };
  return words[field]?.[String(value)] ?? String(value);
}
