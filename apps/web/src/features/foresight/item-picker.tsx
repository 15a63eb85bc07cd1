import { Select } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { itemQuery, itemsQuery } from './api/list-items.js';
import { nameOf } from './name-of.js';

interface Props {
  readonly label: string;
  /** What it is called when none is chosen. */
  readonly none: string;
  readonly value: string | undefined;
  readonly error?: string | undefined;
  readonly onPick: (id: string | undefined) => void;
}

/** Finds a consumable by typing; the service searches, so there may be thousands. */
export function ItemPicker({ label, none, value, error, onPick }: Props) {
  const t = useText();
  const [opened, setOpened] = useState(false);
  const [typed, setTyped] = useState('');
  const own = useQuery({ ...itemQuery(value ?? ''), enabled: value !== undefined }).data;
  const shown = value !== undefined && own ? nameOf(own) : '';
  const q = typed.trim() === shown || typed.trim() === '' ? undefined : typed.trim();
  const found = useQuery({ ...itemsQuery(q), enabled: opened }).data?.items ?? [];
  const items = own && !found.some(({ id }) => id === own.id) ? [own, ...found] : found;
  return (
    <Select
      label={label}
      value={value ?? null}
      data={items.map((item) => ({ value: item.id, label: nameOf(item) }))}
      error={error}
      searchable
      clearable
      clearButtonProps={{ 'aria-label': t.ui.clear }}
      searchValue={typed}
      onSearchChange={setTyped}
      onDropdownOpen={() => setOpened(true)}
      onChange={(id) => onPick(id ?? undefined)}
      filter={({ options }) => options}
      placeholder={none}
      nothingFoundMessage={t.ui.emptySearch}
      maxDropdownHeight={320}
      comboboxProps={{ transitionProps: { duration: 0 } }}
    />
  );
}
