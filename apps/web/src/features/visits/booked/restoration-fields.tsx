import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useText } from '../../../text/text-provider.js';
import { SearchSelectField, TextField } from '../../../ui/fields.js';
import { FieldGroup, FieldRow } from '../../../ui/form.js';
import { templatesQuery } from '../api/list-templates.js';
import css from './booked.module.css';
import type { RestorationValues } from './booking-values.js';

interface Props {
  readonly index: number;
  readonly values: RestorationValues;
  readonly errorAt: (path: string) => string | undefined;
  readonly onChange: (values: RestorationValues) => void;
  readonly onRemove?: () => void;
}

/** What is planned for one restoration; only the template has to be known. */
export function RestorationFields({ index, values, errorAt, onChange, onRemove }: Props) {
  const t = useText();
  const words = t.booked.form;
  const templates = useQuery(templatesQuery).data?.items ?? [];
  const field = (name: 'templateId' | 'tooth' | 'surfaces') => ({
    name: `restorations[${index}].${name}`,
    value: values[name],
    error: errorAt(`restorations[${index}].${name}`),
    onValue: (value: string) => onChange({ ...values, [name]: value }),
  });
  return (
    <FieldGroup title={words.restoration(index + 1)} hint={words.placeHint}>
      <SearchSelectField
        label={words.template}
        choices={templates.map(({ id, name }) => ({ value: id, label: name }))}
        {...field('templateId')}
      />
      <FieldRow>
        <TextField label={words.tooth} maxLength={3} {...field('tooth')} />
        <TextField label={words.surfaces} maxLength={12} {...field('surfaces')} />
      </FieldRow>
      {onRemove && (
        <div className={css.remove}>
          <Button variant="subtle" onClick={onRemove}>
            {words.less(index + 1)}
          </Button>
        </div>
      )}
    </FieldGroup>
  );
}
