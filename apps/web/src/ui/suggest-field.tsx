import { Autocomplete } from '@mantine/core';
import type { FieldProps } from './use-form.js';

interface Props extends FieldProps {
  readonly label: string;
  readonly hint: string;
  readonly suggestions: readonly string[];
}

/** Free text, with what others wrote before as suggestions. */
export function SuggestField({ label, hint, suggestions, name, value, onValue, error }: Props) {
  return (
    <Autocomplete
      size="md"
      name={name}
      label={label}
      description={hint}
      value={value}
      onChange={onValue}
      error={error}
      data={[...suggestions]}
      maxDropdownHeight={280}
      limit={100}
      autoComplete="off"
      comboboxProps={{ transitionProps: { duration: 0 } }}
    />
  );
}
