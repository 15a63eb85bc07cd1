import { Button, CloseButton, NativeSelect, Select, TextInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { newKey } from '../../api/idempotency.js';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { asDecimal } from '../../ui/decimal-text.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { notify } from '../../ui/notice-store.js';
import { useFocusKept } from '../../ui/use-focus-kept.js';
import { useForm } from '../../ui/use-form.js';
import { consumablesQuery } from './api/list-consumables.js';
import type { Presentation } from './api/list-presentations.js';
import { type PackParts, type PartInput, partsQuery, setParts } from './api/pack-parts.js';
import { fullName } from './consumable-words.js';
import css from './pack.module.css';

const DISPENSINGS = ['multi-use', 'single-dose', 'by-piece'] as const;

interface Part {
  readonly key: string;
  readonly consumableId: string;
  readonly name: string;
  readonly dispensing: PartInput['dispensing'];
  readonly containers: string;
  readonly content: string;
  readonly share: string;
}

interface Props {
  readonly pack: Presentation;
  readonly onClose: () => void;
}

/** Makes a pack a kit or a mixed box: what else is in it, and each part's share of the price. */
export function PackPartsForm({ pack, onClose }: Props) {
  const parts = useQuery(partsQuery(pack.id));
  return (
    <Loaded query={parts}>
      {(found) => <Editor pack={pack} found={found} onClose={onClose} />}
    </Loaded>
  );
}

function Editor({ pack, found, onClose }: Props & { readonly found: PackParts }) {
  const t = useText();
  const w = t.setupKits;
  const { book } = useBooking({
    send: (parts: PartInput[]) => setParts(pack.id, parts),
    changes: [['presentations']],
  });
  const initial: { readonly parts: readonly Part[] } = { parts: found.parts.map(typedPart) };
  const form = useForm({
    initial,
    check: ({ parts }) =>
      Object.fromEntries(
        parts.map((part) => [part.key, isWhole(part) ? undefined : w.fillIn] as const),
      ),
    send: ({ parts }) => book(parts.map(partBody)),
    fieldOf: (path): string => keyOf(path, form.values.parts),
    onDone: () => {
      notify({ tone: 'done', text: t.setup.saved(pack.name) });
      onClose();
    },
  });
  const { parts } = form.values;
  const place = useFocusKept(parts.length);
  const change = (key: string, part: Partial<Part>) => {
    form.set(
      'parts',
      parts.map((one) => (one.key === key ? { ...one, ...part } : one)),
    );
    form.clearAt(key);
  };
  return (
    <Form form={form}>
      <p>{w.lead}</p>
      <div ref={place} className={css.parts}>
        {parts.map((part, i) => (
          <PartRow
            key={part.key}
            part={part}
            number={i + 1}
            error={form.errorAt(part.key)}
            onChange={(changed) => change(part.key, changed)}
            onRemove={() =>
              form.set(
                'parts',
                parts.filter((one) => one.key !== part.key),
              )
            }
          />
        ))}
        <div>
          <Button variant="default" onClick={() => form.set('parts', [...parts, emptyPart()])}>
            {w.add}
          </Button>
        </div>
      </div>
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

function emptyPart(): Part {
  const blank = { consumableId: '', name: '', containers: '1', content: '', share: '' };
  return { key: newKey(), dispensing: 'multi-use', ...blank };
}

function typedPart(part: PackParts['parts'][number]): Part {
  return {
    key: newKey(),
    consumableId: part.consumableId,
    name: part.consumableName,
    dispensing: part.dispensing,
    containers: String(part.containersPerPack),
    content: part.contentPerContainer,
    share: part.sharePercent,
  };
}

function isWhole({ consumableId, containers, content, share }: Part): boolean {
  const numbers = [asDecimal(content), asDecimal(share)];
  return (
    consumableId !== '' && /^[1-9]\d{0,4}$/.test(containers.trim()) && !numbers.includes(undefined)
  );
}

function partBody({ consumableId, dispensing, containers, content, share }: Part): PartInput {
  return {
    ...{ consumableId, dispensing, containersPerPack: Number(containers.trim()) },
    contentPerContainer: asDecimal(content) ?? content,
    sharePercent: asDecimal(share) ?? share,
  };
}

/** The service's 'parts[2].sharePercent' as the row that it belongs to. */
function keyOf(path: string, parts: readonly Part[]): string {
  const index = /^parts\[(\d+)\]/.exec(path)?.[1];
  return parts[index === undefined ? parts.length - 1 : Number(index)]?.key ?? path;
}

interface RowProps {
  readonly part: Part;
  readonly number: number;
  readonly error: string | undefined;
  readonly onChange: (change: Partial<Part>) => void;
  readonly onRemove: () => void;
}

function PartRow({ part, number, error, onChange, onRemove }: RowProps) {
  const t = useText();
  const { setupKits: w, setupCatalogue } = t;
  return (
    <fieldset className={css.part}>
      <legend>{w.part(number)}</legend>
      <Consumable part={part} error={error} onChange={onChange} />
      <NativeSelect
        className={css.half ?? ''}
        label={setupCatalogue.dispensing}
        value={part.dispensing}
        data={DISPENSINGS.map((one) => ({ value: one, label: setupCatalogue.dispensings[one] }))}
        onChange={(event) => {
          const chosen = DISPENSINGS.find((one) => one === event.currentTarget.value);
          if (chosen) onChange({ dispensing: chosen });
        }}
      />
      <TextInput
        label={w.containers}
        inputMode="numeric"
        autoComplete="off"
        value={part.containers}
        onChange={(event) => onChange({ containers: event.currentTarget.value })}
      />
      <TextInput
        label={w.content}
        inputMode="decimal"
        autoComplete="off"
        value={part.content}
        onChange={(event) => onChange({ content: event.currentTarget.value })}
      />
      <TextInput
        label={w.share}
        inputMode="decimal"
        autoComplete="off"
        rightSection={<span aria-hidden="true">%</span>}
        value={part.share}
        onChange={(event) => onChange({ share: event.currentTarget.value })}
      />
      <CloseButton
        size="xl"
        className={css.remove ?? ''}
        aria-label={w.remove(number)}
        onClick={onRemove}
      />
    </fieldset>
  );
}

function Consumable({ part, error, onChange }: Pick<RowProps, 'part' | 'error' | 'onChange'>) {
  const { setupKits: w } = useText();
  const [typed, setTyped] = useState(part.name);
  const [opened, setOpened] = useState(false);
  const q = typed.trim() === '' || typed.trim() === part.name ? undefined : typed.trim();
  const found = useQuery({ ...consumablesQuery({ q, limit: 30 }), enabled: opened }).data?.items;
  const own = part.consumableId === '' ? [] : [{ value: part.consumableId, label: part.name }];
  const others = (found ?? [])
    .filter(({ id }) => id !== part.consumableId)
    .map((one) => ({ value: one.id, label: fullName(one) }));
  return (
    <Select
      className={css.half ?? ''}
      label={w.consumable}
      value={part.consumableId === '' ? null : part.consumableId}
      data={[...own, ...others]}
      error={error}
      searchable
      searchValue={typed}
      onSearchChange={setTyped}
      onDropdownOpen={() => setOpened(true)}
      onChange={(id, chosen) => {
        if (id !== null && chosen !== null) onChange({ consumableId: id, name: chosen.label });
      }}
      allowDeselect={false}
      filter={({ options }) => options}
      comboboxProps={{ transitionProps: { duration: 0 } }}
    />
  );
}
