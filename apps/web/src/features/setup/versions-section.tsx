import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { Shape } from '../../api/client.js';
import { useMay } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Loaded } from '../../ui/loaded.js';
import { Section } from '../../ui/section.js';
import { StatusMark } from '../../ui/status-mark.js';
import { Moment } from '../../ui/values.js';
import { type Template, templateQuery, versionsQuery } from './api/get-template.js';
import { peopleQuery } from './api/list-people.js';
import css from './editor.module.css';
import { contentOfVersion, differences } from './version-diff.js';

/** Every version with its note, and what was different in the one that is shown. */
export function VersionsSection({ template }: { readonly template: Template }) {
  const w = useText().setupTemplates;
  const versions = useQuery(versionsQuery(template.id));
  return (
    <Section title={w.versions} hint={w.versionsHint}>
      <Loaded query={versions}>
        {({ items }) => (
          <ul className={css.versions}>
            {items.map((version) => (
              <VersionRow key={version.version} version={version} template={template} />
            ))}
          </ul>
        )}
      </Loaded>
    </Section>
  );
}

interface RowProps {
  readonly version: Shape<'VersionSummaryDto'>;
  readonly template: Template;
}

function VersionRow({ version: { version, note, recordedAt, recordedBy }, template }: RowProps) {
  const t = useText();
  const w = t.setupTemplates;
  const name = useNameOf(recordedBy);
  const isLatest = version === template.latestVersion;
  const isShown = version === template.version;
  return (
    <li className={css.version}>
      <div>
        <h3>{w.versionOf(version)}</h3>
        {isLatest && <StatusMark tone="good">{w.current}</StatusMark>}
      </div>
      <div>
        <p>{note ?? <span className={css.quiet}>{w.noNote}</span>}</p>
        <p className={css.quiet}>
          <Moment value={recordedAt} />
          {name !== undefined && ` ${w.by(name)}`}
        </p>
        {isShown && <Different template={template} />}
      </div>
      {isShown ? (
        <StatusMark tone="accent">{w.shown}</StatusMark>
      ) : (
        <Link
          className="tb-screen-only"
          from="/setup/templates/$templateId"
          to="/setup/templates/$templateId"
          params={{ templateId: template.id }}
          search={(old) => ({ ...old, version: isLatest ? undefined : String(version) })}
          aria-label={w.open(version)}
        >
          {w.look}
        </Link>
      )}
    </li>
  );
}

/** Only who manages people may see all their names. */
function useNameOf(personId: string): string | undefined {
  const may = useMay();
  const people = useQuery({ ...peopleQuery(undefined, 500), enabled: may('people.manage') });
  return people.data?.items.find(({ id }) => id === personId)?.displayName;
}

function Different({ template }: { readonly template: Template }) {
  const t = useText();
  const w = t.setupTemplates;
  const format = useFormat();
  const isFirst = template.version === 1;
  const before = useQuery({
    ...templateQuery(template.id, template.version - 1),
    enabled: !isFirst,
  });
  if (isFirst) return <p className={css.quiet}>{w.first}</p>;
  if (!before.data) return null;
  const words = { format, t };
  const found = differences(contentOfVersion(before.data), contentOfVersion(template), words);
  if (found.length === 0) return <p className={css.quiet}>{w.same}</p>;
  return (
    <ul>
      {found.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}
