import {
  Checkbox,
  NativeSelect,
  PasswordInput,
  Select,
  Textarea,
  TextInput,
  VisuallyHidden,
} from '@mantine/core';
import { useText } from '../text/text-provider.js';
import type { FieldProps, FlagProps } from './use-form.js';

/** Every field: `<TextField label="…" {...form.field('name')} />`; the error stands beside it. */
interface Common extends FieldProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly disabled?: boolean;
  readonly required?: boolean;
}

function shared({ name, value, onValue, error, label, hint, disabled, required }: Common) {
  return {
    name,
    value,
    label,
    error,
    required: required ?? false,
    withAsterisk: false,
    disabled: disabled ?? false,
    description: hint,
    onChange: (event: { readonly currentTarget: { readonly value: string } }) =>
      onValue(event.currentTarget.value),
  };
}

interface TextProps extends Common {
  readonly autoComplete?: string;
  readonly placeholder?: string;
  readonly maxLength?: number;
  readonly type?: 'text' | 'email' | 'search';
  readonly 'data-autofocus'?: boolean;
}

const extras = ({ autoComplete = 'off', placeholder, maxLength }: TextProps) => ({
  autoComplete,
  ...(placeholder === undefined ? {} : { placeholder }),
  ...(maxLength === undefined ? {} : { maxLength }),
});

export function TextField(props: TextProps) {
  return (
    <TextInput
      {...shared(props)}
      {...extras(props)}
      type={props.type ?? 'text'}
      spellCheck={false}
      data-autofocus={props['data-autofocus']}
    />
  );
}

export function PasswordField(props: TextProps & { readonly toggleLabel: string }) {
  return (
    <PasswordInput
      {...shared(props)}
      {...extras(props)}
      visibilityToggleButtonProps={{ 'aria-label': props.toggleLabel, tabIndex: 0 }}
    />
  );
}

export function NoteField(props: TextProps) {
  return <Textarea {...shared(props)} {...extras(props)} autosize minRows={2} maxRows={8} />;
}

/** The unit stands inside the field; whoever does not see it hears it with the label. */
function DecimalLabel({ label, unit }: { readonly label: string; readonly unit?: string }) {
  return (
    <>
      {label}
      {unit !== undefined && <VisuallyHidden> ({unit})</VisuallyHidden>}
    </>
  );
}

/** A decimal as it is typed, with point or comma; read it with `asDecimal` when sending. */
export function DecimalField(props: TextProps & { readonly unit?: string }) {
  return (
    <TextInput
      {...shared(props)}
      {...extras(props)}
      inputMode="decimal"
      rightSection={props.unit === undefined ? null : <span aria-hidden="true">{props.unit}</span>}
      rightSectionWidth={props.unit === undefined ? 0 : `${props.unit.length * 0.6 + 1.4}rem`}
      label={<DecimalLabel {...props} />}
    />
  );
}

export function WholeField(props: TextProps) {
  return <TextInput {...shared(props)} {...extras(props)} inputMode="numeric" />;
}

/** A day; the browser's own calendar, in the person's own way of writing. */
export function DateField(props: Common & { readonly min?: string; readonly max?: string }) {
  const limits = {
    ...(props.min === undefined ? {} : { min: props.min }),
    ...(props.max === undefined ? {} : { max: props.max }),
  };
  return <TextInput {...shared(props)} {...limits} type="date" />;
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

interface ChoiceProps extends Common {
  readonly choices: readonly Choice[];
  /** What an empty choice is called; without it one of the choices must be taken. */
  readonly empty?: string;
}

/** A short list of choices (up to some twenty). */
export function SelectField(props: ChoiceProps) {
  const empty = props.empty === undefined ? [] : [{ value: '', label: props.empty }];
  return <NativeSelect {...shared(props)} data={[...empty, ...props.choices]} />;
}

/** A long list: typing narrows it. */
export function SearchSelectField(props: ChoiceProps) {
  const t = useText();
  const { onChange: _, ...rest } = shared(props);
  return (
    <Select
      {...rest}
      value={props.value === '' ? null : props.value}
      onChange={(value) => props.onValue(value ?? '')}
      data={[...props.choices]}
      searchable
      clearable={props.empty !== undefined}
      clearButtonProps={{ 'aria-label': t.ui.clear }}
      nothingFoundMessage={t.ui.emptySearch}
      placeholder={props.empty ?? t.ui.choose}
      maxDropdownHeight={320}
      limit={200}
      comboboxProps={{ transitionProps: { duration: 0 } }}
    />
  );
}

export function CheckField({
  label,
  hint,
  name,
  checked,
  onChecked,
}: FlagProps & { readonly label: string; readonly hint?: string }) {
  return (
    <Checkbox
      name={name}
      label={label}
      description={hint}
      checked={checked}
      onChange={(event) => onChecked(event.currentTarget.checked)}
    />
  );
}
