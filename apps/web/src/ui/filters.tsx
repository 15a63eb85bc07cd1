import { NativeSelect, TextInput } from '@mantine/core';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { useText } from '../text/text-provider.js';
import type { Choice } from './fields.js';
import css from './filters.module.css';

/** The row of filters above a list. Each writes to the address, and only there. */
export function Filters({ children }: { readonly children: ReactNode }) {
  return <search className={`${css.row ?? ''} tb-screen-only`}>{children}</search>;
}

interface SearchProps {
  readonly label?: string;
  readonly value: string | undefined;
  readonly onSearch: (text: string | undefined) => void;
}

/** Searches a moment after the last letter. */
export function SearchBox({ label, value, onSearch }: SearchProps) {
  const t = useText();
  const [typed, setTyped] = useState(value ?? '');
  const timer = useRef<number | undefined>(undefined);
  useEffect(() => setTyped(value ?? ''), [value]);
  useEffect(() => () => window.clearTimeout(timer.current), []);
  const type = (text: string) => {
    setTyped(text);
    window.clearTimeout(timer.current);
    timer.current = window.setTimeout(() => onSearch(text.trim() || undefined), 300);
  };
  return (
    <TextInput
      className={css.search ?? ''}
      type="search"
      label={label ?? t.ui.search}
      value={typed}
      onChange={(event) => type(event.currentTarget.value)}
    />
  );
}

interface FilterSelectProps<T extends string> {
  readonly label: string;
  readonly value: T | undefined;
  readonly choices: readonly (Choice & { readonly value: T })[];
  /** What "no filter" is called. */
  readonly all?: string;
  readonly onChoose: (value: T | undefined) => void;
}

export function FilterSelect<T extends string>(props: FilterSelectProps<T>) {
  const t = useText();
  const { label, value, choices, all, onChoose } = props;
  return (
    <NativeSelect
      label={label}
      value={value ?? ''}
      data={[{ value: '', label: all ?? t.ui.all }, ...choices]}
      onChange={(event) => {
        const chosen = event.currentTarget.value;
        onChoose(choices.find((choice) => choice.value === chosen)?.value);
      }}
    />
  );
}

interface FilterDayProps {
  readonly label: string;
  readonly value: string | undefined;
  readonly onChoose: (day: string | undefined) => void;
}

export function FilterDay({ label, value, onChoose }: FilterDayProps) {
  return (
    <TextInput
      type="date"
      label={label}
      value={value ?? ''}
      onChange={(event) => onChoose(event.currentTarget.value || undefined)}
    />
  );
}
