import { NativeSelect } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useText } from '../../../text/text-provider.js';
import { templatesQuery } from '../api/list-templates.js';
import type { RestorationDraft } from '../draft/draft.js';

interface Props {
  readonly id: string;
  readonly error: string | undefined;
  readonly of: RestorationDraft;
  readonly onChoose: (templateId: string) => void;
}

export function TemplateField({ id, error, of, onChoose }: Props) {
  const words = useText().chairside.restoration;
  const templates = useQuery(templatesQuery).data?.items ?? [];
  return (
    <NativeSelect
      id={id}
      label={words.template}
      error={error}
      value={of.templateId}
      onChange={(event) => onChoose(event.currentTarget.value)}
      data={[
        { value: '', label: words.chooseTemplate },
        ...templates.map((template) => ({ value: template.id, label: template.name })),
      ]}
    />
  );
}
