import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Loaded } from '../../../ui/loaded.js';
import { Section } from '../../../ui/section.js';
import { StatusMark } from '../../../ui/status-mark.js';
import { type Suggestion, suggestionQuery } from '../api/suggest-version.js';
import { NewVersionDialog } from './new-version-dialog.js';
import { SaidAndUsed } from './said-and-used.js';
import css from './suggestion-section.module.css';

const route = getRouteApi('/in/costs/templates');

interface Props {
  readonly templateId: string;
  readonly last: string;
}

/** In a sentence a line: what the template says, and what was used; and a version that says so. */
export function SuggestionSection({ templateId, last }: Props) {
  const suggestion = useQuery(suggestionQuery(templateId, last));
  return (
    <Loaded query={suggestion}>
      {(data) => <Suggested data={data} stale={suggestion.isPlaceholderData} />}
    </Loaded>
  );
}

function Suggested({ data, stale }: { readonly data: Suggestion; readonly stale: boolean }) {
  const t = useText();
  const format = useFormat();
  const words = t.costReports.suggestion;
  const { version, restorations } = data;
  const hint =
    restorations === 0
      ? words.unused(version)
      : words.over(version, format.number(String(restorations)));
  return (
    <Section title={words.title} hint={hint} aside={t.costs.usage.versionNow(version)}>
      <div aria-busy={stale}>
        <WhatToDo data={data} />
        <SaidAndUsed data={data} />
      </div>
    </Section>
  );
}

function WhatToDo({ data }: { readonly data: Suggestion }) {
  const t = useText();
  const may = useMay();
  const { do: doing } = route.useSearch();
  const navigate = route.useNavigate();
  const words = t.costReports.suggestion;
  const next = data.version + 1;
  const { suggestedVersion } = data;
  const turn = (to: 'version' | undefined) =>
    void navigate({
      search: (old) => ({ ...old, templateId: data.templateId, do: to }),
      replace: true,
      resetScroll: false,
    });
  if (data.restorations === 0) return null;
  if (suggestedVersion === null) {
    return (
      <p className={css.act}>
        <StatusMark tone="good">{words.agrees}</StatusMark>
      </p>
    );
  }
  if (!may('templates.write')) return <p className={css.act}>{words.others}</p>;
  return (
    <div className={`${css.act ?? ''} tb-screen-only`}>
      <Button onClick={() => turn('version')}>{words.make(next)}</Button>
      <span>{words.makeHint}</span>
      <NewVersionDialog
        data={data}
        body={suggestedVersion}
        opened={doing === 'version'}
        onClose={() => turn(undefined)}
      />
    </div>
  );
}
