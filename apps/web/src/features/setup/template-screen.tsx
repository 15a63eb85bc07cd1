import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMay, useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { StatusMark } from '../../ui/status-mark.js';
import { type Template, templateQuery } from './api/get-template.js';
import { dayOf } from './day-of.js';
import css from './editor.module.css';
import { ExamplePanel } from './example-panel.js';
import parts from './parts.module.css';
import { RenameDialog } from './rename-dialog.js';
import { TemplateEditor } from './template-editor.js';
import { TemplateSheet } from './template-sheet.js';
import type { ExampleAddress } from './use-example.js';
import { VersionsSection } from './versions-section.js';

const route = getRouteApi('/in/setup/templates/$templateId');

export function TemplateScreen() {
  const w = useText().setupTemplates;
  const { templateId } = route.useParams();
  const { version } = route.useSearch();
  const template = useQuery(
    templateQuery(templateId, version === undefined ? undefined : Number(version)),
  );
  return (
    <>
      <Link className={`${parts.back ?? ''} tb-screen-only`} to="/setup/templates" search={{}}>
        {w.back}
      </Link>
      <Loaded query={template}>{(data) => <Shown template={data} />}</Loaded>
    </>
  );
}

function useExampleAddress(): ExampleAddress {
  const { teeth, shades, people, room, setting } = route.useSearch();
  const navigate = route.useNavigate();
  return {
    state: { teeth, shades, people, room, setting },
    change: (part) =>
      void navigate({
        search: (old) => ({ ...old, ...part }),
        replace: true,
        resetScroll: false,
      }),
  };
}

function Shown({ template }: { readonly template: Template }) {
  const may = useMay();
  const example = useExampleAddress();
  const isLatest = template.version === template.latestVersion;
  const editable = may('templates.write') && isLatest;
  return (
    <>
      <Head template={template} isLatest={isLatest} />
      {editable ? (
        <TemplateEditor
          key={`${template.id}/${template.version}`}
          template={template}
          example={example}
          onSaved={() => undefined}
        />
      ) : (
        <div className={css.layout}>
          <TemplateSheet template={template} />
          <ExamplePanel example={example} template={template} />
        </div>
      )}
      <VersionsSection template={template} />
      <Caution />
      {may('templates.write') && <RenameDialog template={template} />}
    </>
  );
}

interface HeadProps {
  readonly template: Template;
  readonly isLatest: boolean;
}

function Head({ template, isLatest }: HeadProps) {
  const t = useText();
  const w = t.setupTemplates;
  const format = useFormat();
  const may = useMay();
  const navigate = route.useNavigate();
  const { timeZone } = useSession().practice;
  const { name, version, latestVersion, recordedAt, active } = template;
  const day = format.day(dayOf(recordedAt, timeZone));
  return (
    <PageHead
      title={name}
      lead={
        <>
          {isLatest ? w.versionLead(version, day) : w.oldLead(version, latestVersion)}{' '}
          {!active && <StatusMark tone="quiet">{t.setup.state.retired}</StatusMark>}
        </>
      }
    >
      {!isLatest && (
        <Button
          variant="default"
          onClick={() => void navigate({ search: (old) => ({ ...old, version: undefined }) })}
        >
          {w.toLatest}
        </Button>
      )}
      {may('templates.write') && (
        <Button
          variant="default"
          onClick={() => void navigate({ search: (old) => ({ ...old, rename: '1' as const }) })}
        >
          {w.rename}
        </Button>
      )}
    </PageHead>
  );
}
