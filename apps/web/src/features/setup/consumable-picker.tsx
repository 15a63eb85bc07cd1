import { Select } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { type Consumable, consumablesQuery } from './api/list-consumables.js';
import { fullName } from './consumable-words.js';
import { SHADES } from './template-draft.js';

interface Props {
  readonly label: string;
  /** A consumable, SHADES, or '' for nothing yet. */
  readonly value: string;
  readonly name: string;
  readonly error: string | undefined;
  /** Whether the chosen shades can stand here. */
  readonly withShades: boolean;
  readonly autoFocus: boolean;
  readonly onPick: (consumable: Consumable | typeof SHADES) => void;
}

const contains = (text: string, part: string) => text.toLowerCase().includes(part.toLowerCase());

/** Finds a consumable by typing; the service searches, so there may be thousands. */
export function ConsumablePicker(props: Props) {
  const { value, error, onPick } = props;
  const t = useText();
  const w = t.setupTemplates;
  const [opened, setOpened] = useState(false);
  const [typed, setTyped] = useState('');
  const shown = value === SHADES ? w.shades : props.name;
  const q = typed.trim() === shown || typed.trim() === '' ? undefined : typed.trim();
  const found = useQuery({ ...consumablesQuery({ q, limit: 30 }), enabled: opened }).data?.items;
  const choices = (found ?? []).map((each) => ({ value: each.id, label: fullName(each) }));
  const shades = { value: SHADES, label: w.shades };
  const own = { value, label: shown };
  const withOwn =
    value === '' || value === SHADES || choices.some((choice) => choice.value === value)
      ? choices
      : [own, ...choices];
  const offersShades =
    value === SHADES || (props.withShades && (q === undefined || contains(w.shades, q)));
  const pick = (id: string | null) => {
    if (id === null) return;
    if (id === SHADES) return onPick(SHADES);
    const consumable = found?.find((each) => each.id === id);
    if (consumable) onPick(consumable);
  };
  return (
    <Select
      aria-label={props.label}
      value={value === '' ? null : value}
      data={offersShades ? [shades, ...withOwn] : withOwn}
      error={error}
      searchable
      searchValue={typed}
      onSearchChange={setTyped}
      onDropdownOpen={() => setOpened(true)}
      onChange={pick}
      allowDeselect={false}
      filter={({ options }) => options}
      placeholder={t.ui.choose}
      nothingFoundMessage={t.ui.emptySearch}
      maxDropdownHeight={320}
      autoFocus={props.autoFocus}
      data-picker
      comboboxProps={{
        transitionProps: { duration: 0 },
        width: 'max-content',
        position: 'bottom-start',
      }}
    />
  );
}
