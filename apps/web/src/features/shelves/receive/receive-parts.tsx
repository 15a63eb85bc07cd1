import { TextInput } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { type KitPart, partsQuery } from '../api/list-parts.js';
import type { Line, PartLot } from './lines.js';
import css from './receive.module.css';

interface Props {
  readonly line: Line;
  readonly error: string | undefined;
  readonly onParts: (parts: Line['parts']) => void;
}

/** A kit asks for the lots of its parts, where they have their own; of any other pack it is nothing. */
export function ReceiveParts(props: Props & { readonly presentationId: string }) {
  const parts = useQuery(partsQuery(props.presentationId)).data ?? [];
  return parts.length === 0 ? null : <Parts {...props} all={parts} />;
}

const NONE: PartLot = { lotNumber: '', expiresOn: '' };

function Parts({ line, error, onParts, all }: Props & { readonly all: readonly KitPart[] }) {
  const { receiveMore: words } = useText();
  const format = useFormat();
  const change = (id: string, part: Partial<PartLot>) =>
    onParts({ ...line.parts, [id]: { ...NONE, ...line.parts[id], ...part } });
  return (
    <fieldset className={css.sub}>
      <legend>{words.kit}</legend>
      <p className={css.hint}>{words.kitHint}</p>
      {all.map(({ consumableId, consumableName, sharePercent }) => (
        <div key={consumableId} className={css.lotRow}>
          <span className={css.part}>
            {consumableName}
            <span className={css.pack}>{words.kitShare(`${format.number(sharePercent)} %`)}</span>
          </span>
          <TextInput
            label={words.lotNumber}
            aria-label={`${consumableName}: ${words.lotNumber}`}
            autoComplete="off"
            spellCheck={false}
            maxLength={60}
            value={line.parts[consumableId]?.lotNumber ?? ''}
            onChange={(event) => change(consumableId, { lotNumber: event.currentTarget.value })}
          />
          <TextInput
            type="date"
            label={words.lotExpires}
            aria-label={`${consumableName}: ${words.lotExpires}`}
            value={line.parts[consumableId]?.expiresOn ?? ''}
            onChange={(event) => change(consumableId, { expiresOn: event.currentTarget.value })}
          />
        </div>
      ))}
      {error !== undefined && (
        <p className={css.error} role="alert">
          {error}
        </p>
      )}
    </fieldset>
  );
}
