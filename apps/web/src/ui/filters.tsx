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

/**
 * What was chosen stands there at once; the address, and with it the value, follows a moment later. A
 * field that went back to the old value meanwhile would lose the next key that is pressed.
 */
function useAhead(value: string) {
  const [shown, setShown] = useState(value);
  useEffect(() => setShown(value), [value]);
  return [shown, setShown] as const;
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
  const [shown, setShown] = useAhead(value ?? '');
  return (
    <NativeSelect
      label={label}
      value={shown}
      data={[{ value: '', label: all ?? t.ui.all }, ...choices]}
      onBlur={() => setShown(value ?? '')}
      onChange={(event) => {
        const chosen = event.currentTarget.value;
        setShown(chosen);
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

/** While a year is typed it is 0002, 0020, 0202: no day that anybody means. */
const FIRST_DAY = '1000-01-01';

export function FilterDay({ label, value, onChoose }: FilterDayProps) {
  const [shown, setShown] = useAhead(value ?? '');
  const type = (day: string) => {
    setShown(day);
    if (day === '' || day >= FIRST_DAY) onChoose(day || undefined);
  };
  return (
    <TextInput
      type="date"
      label={label}
      value={shown}
      onChange={(event) => type(event.currentTarget.value)}
    />
  );
}
