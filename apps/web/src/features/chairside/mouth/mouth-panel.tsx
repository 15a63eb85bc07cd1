import { Button, TextInput, VisuallyHidden } from '@mantine/core';
import { type FormEvent, useState } from 'react';
import {
  formatTooth,
  type IsoTooth,
  isPrimary,
  parseTooth,
  type ToothNotation,
} from '#lib/dentition';
import { useText } from '../../../text/text-provider.js';
import { useChairside } from '../chairside-context.js';
import { Segments } from '../parts/segments.js';
import { toothName } from '../words.js';
import { Arch } from './arch.js';
import css from './mouth-panel.module.css';

interface Props {
  readonly primary: boolean;
  readonly onPrimary: (primary: boolean) => void;
  readonly onNotation: (notation: ToothNotation) => void;
  readonly onPick: (tooth: IsoTooth) => void;
}

/** The teeth: to tap, to walk through, or to type into. */
export function MouthPanel({ primary, onPrimary, onNotation, onPick }: Props) {
  const t = useText();
  const { draft, notation } = useChairside();
  const [pointed, setPointed] = useState<IsoTooth>();
  const picked = new Set(draft.restorations.map(({ tooth }) => tooth));
  const words = t.chairside.mouth;
  return (
    <section className={css.panel} aria-label={words.title}>
      <div className={css.switches}>
        <Segments
          label={words.dentition}
          name="dentition"
          value={primary ? 'primary' : 'adult'}
          choices={[
            { value: 'adult', label: words.adult },
            { value: 'primary', label: words.primary },
          ]}
          onChoose={(chosen) => onPrimary(chosen === 'primary')}
        />
        <Segments
          label={words.numbers}
          name="numbers"
          value={notation}
          choices={[
            { value: 'iso', label: words.iso },
            { value: 'universal', label: words.universal },
          ]}
          onChoose={onNotation}
        />
      </div>
      <div className={css.mouth}>
        <Arch
          primary={primary}
          notation={notation}
          picked={picked}
          onPick={onPick}
          onPoint={setPointed}
        />
        <div className={css.middle}>
          <ToothNumber
            onPick={(tooth) => {
              if (isPrimary(tooth) !== primary) onPrimary(isPrimary(tooth));
              onPick(tooth);
            }}
          />
          <p className={css.pointed} aria-hidden="true">
            {pointed === undefined
              ? words.hint
              : `${formatTooth(pointed, notation)} · ${toothName(t, pointed)}`}
          </p>
          <VisuallyHidden>{words.hint}</VisuallyHidden>
        </div>
      </div>
    </section>
  );
}

function ToothNumber({ onPick }: { readonly onPick: (tooth: IsoTooth) => void }) {
  const t = useText();
  const { notation, trouble, settle } = useChairside();
  const [typed, setTyped] = useState('');
  const [wrong, setWrong] = useState<string>();
  const add = (event: FormEvent) => {
    event.preventDefault();
    event.stopPropagation();
    const tooth = parseTooth(typed, notation);
    if (tooth === undefined) {
      setWrong(typed.trim() === '' ? t.chairside.check.tooth : t.chairside.check.noTooth(typed));
      return;
    }
    setTyped('');
    onPick(tooth);
  };
  return (
    <form className={css.number} onSubmit={add} noValidate>
      <TextInput
        id="control-tooth"
        label={t.chairside.mouth.number}
        value={typed}
        error={wrong ?? trouble.tooth}
        autoComplete="off"
        spellCheck={false}
        maxLength={3}
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          setWrong(undefined);
          settle('tooth');
        }}
      />
      <Button type="submit" variant="default">
        {t.chairside.mouth.add}
      </Button>
    </form>
  );
}
