import { useQuery } from '@tanstack/react-query';
import { useText } from '../../text/text-provider.js';
import { FilterSelect, Filters } from '../../ui/filters.js';
import { dentistsQuery, templateChoicesQuery } from './api/list-choices.js';
import { type Choice, REASONS } from './choice.js';
import { PeriodFilter } from './period-filter.js';

interface Props {
  readonly choice: Choice;
  readonly onChange: (part: Partial<Choice>) => void;
}

/** Which restorations: period, template, reason, dentist. */
export function ChoiceFilters({ choice, onChange }: Props) {
  const t = useText();
  const words = t.costs.filter;
  const templates = useQuery(templateChoicesQuery).data?.items ?? [];
  const dentists = useQuery(dentistsQuery).data?.items ?? [];
  return (
    <Filters>
      <PeriodFilter from={choice.from} to={choice.to} onChange={onChange} />
      <FilterSelect
        label={words.template}
        value={choice.templateId}
        choices={templates.map(({ id, name }) => ({ value: id, label: name }))}
        onChoose={(templateId) => onChange({ templateId })}
      />
      <FilterSelect
        label={words.reason}
        value={choice.reason}
        choices={REASONS.map((reason) => ({ value: reason, label: t.costs.reasons[reason] }))}
        onChoose={(reason) => onChange({ reason })}
      />
      <FilterSelect
        label={words.dentist}
        value={choice.dentistId}
        choices={dentists.map(({ id, displayName }) => ({ value: id, label: displayName }))}
        onChoose={(dentistId) => onChange({ dentistId })}
      />
    </Filters>
  );
}
