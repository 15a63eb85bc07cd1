import { Button, Checkbox, TextInput } from '@mantine/core';
import { useId, useState } from 'react';
import { useText } from '../../../text/text-provider.js';
import type { Line, SpreadKey } from './lines.js';
import css from './receive.module.css';
import { emptyLot, ReceiveLots } from './receive-lots.js';
import { ReceiveParts } from './receive-parts.js';

interface Props {
  readonly line: Line;
  readonly number: number;
  readonly spreadKey: SpreadKey;
  readonly errorAt: (field: string) => string | undefined;
  readonly onChange: (change: Partial<Line>) => void;
}

/** What is rare about a line: behind "More", unless it is written already. */
export function ReceiveMore({ line, number, spreadKey, errorAt, onChange }: Props) {
  const { receiveMore: words } = useText();
  const [wanted, setWanted] = useState(false);
  const panel = useId();
  const isOpen = wanted || isWritten(line);
  return (
    <div className={css.rare}>
      {spreadKey === 'weight' && !line.sample && (
        <Weight line={line} error={errorAt('weightGrams')} onChange={onChange} />
      )}
      {line.product && (
        <ReceiveParts
          presentationId={line.product.presentation.id}
          line={line}
          error={errorAt('parts')}
          onParts={(parts) => onChange({ parts })}
        />
      )}
      {line.lots.length > 0 && (
        <ReceiveLots
          lots={line.lots}
          error={errorAt('lots')}
          onLots={(lots) => onChange({ lots })}
        />
      )}
      {isOpen && <Panel id={panel} line={line} errorAt={errorAt} onChange={onChange} />}
      {!isWritten(line) && (
        <div>
          <Button
            variant="subtle"
            size="compact-md"
            aria-expanded={isOpen}
            aria-controls={isOpen ? panel : undefined}
            aria-label={isOpen ? undefined : words.moreOf(number)}
            onClick={() => setWanted(!wanted)}
          >
            {isOpen ? words.less : words.more}
          </Button>
        </div>
      )}
    </div>
  );
}

function isWritten({ sample, damaged, missing }: Line): boolean {
  return sample || damaged !== '' || missing !== '';
}

interface PartProps {
  readonly line: Line;
  readonly onChange: (change: Partial<Line>) => void;
}

function Weight({ line, error, onChange }: PartProps & { readonly error: string | undefined }) {
  const { receiveMore: words } = useText();
  return (
    <TextInput
      className={css.short ?? ''}
      label={words.weight}
      description={words.weightHint}
      inputMode="decimal"
      autoComplete="off"
      rightSection={<span aria-hidden="true">g</span>}
      value={line.weight}
      error={error}
      onChange={(event) => onChange({ weight: event.currentTarget.value })}
    />
  );
}

interface PanelProps extends PartProps {
  readonly id: string;
  readonly errorAt: (field: string) => string | undefined;
}

function Panel({ id, line, errorAt, onChange }: PanelProps) {
  const { receiveMore: words } = useText();
  return (
    <div id={id} className={css.panel}>
      <div>
        <Checkbox
          className={css.noLot ?? ''}
          label={words.sample}
          checked={line.sample}
          onChange={(event) => {
            const sample = event.currentTarget.checked;
            onChange({ sample, packPrice: sample ? '0' : '' });
          }}
        />
        <p className={css.hint}>{words.sampleHint}</p>
      </div>
      <div className={css.faults}>
        <TextInput
          label={words.damaged}
          inputMode="numeric"
          autoComplete="off"
          value={line.damaged}
          error={errorAt('damaged')}
          onChange={(event) => onChange({ damaged: event.currentTarget.value })}
        />
        <TextInput
          label={words.damagedLot}
          autoComplete="off"
          spellCheck={false}
          maxLength={60}
          disabled={line.damaged.trim() === ''}
          value={line.damagedLot}
          onChange={(event) => onChange({ damagedLot: event.currentTarget.value })}
        />
        <TextInput
          label={words.missing}
          inputMode="numeric"
          autoComplete="off"
          value={line.missing}
          error={errorAt('missing')}
          onChange={(event) => onChange({ missing: event.currentTarget.value })}
        />
        <p className={css.hint}>{words.faultsHint}</p>
      </div>
      {line.lots.length === 0 && (
        <div>
          <Button
            variant="default"
            onClick={() => {
              const { lotNumber, expiresOn } = line;
              const own = { ...emptyLot(), lotNumber: line.noLot ? '' : lotNumber, expiresOn };
              onChange({ lots: [own, emptyLot()], lotNumber: '', expiresOn: '', noLot: false });
            }}
          >
            {words.several}
          </Button>
        </div>
      )}
    </div>
  );
}
