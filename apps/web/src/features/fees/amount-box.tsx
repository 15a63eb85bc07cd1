import { TextInput } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import { useFormat } from '../../app/use-format.js';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly error: string | undefined;
  readonly onType: (typed: string | undefined) => void;
}

/** An amount among filters: what is typed stands there at once and goes to the address a moment later. */
export function AmountBox({ label, value, error, onType }: Props) {
  const { currency } = useFormat();
  const [typed, setTyped] = useState(value);
  const timer = useRef<number | undefined>(undefined);
  useEffect(() => setTyped(value), [value]);
  useEffect(() => () => window.clearTimeout(timer.current), []);
  const type = (text: string) => {
    setTyped(text);
    window.clearTimeout(timer.current);
    timer.current = window.setTimeout(() => onType(text.trim() || undefined), 300);
  };
  return (
    <TextInput
      label={label}
      value={typed}
      error={error}
      inputMode="decimal"
      autoComplete="off"
      rightSection={<span aria-hidden="true">{currency}</span>}
      rightSectionWidth="3.2rem"
      onChange={(event) => type(event.currentTarget.value)}
    />
  );
}
