import { Button, TextInput } from '@mantine/core';
import { useEffect, useState } from 'react';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { asDecimal } from '../../../ui/decimal-text.js';
import { useChairside } from '../chairside-context.js';
import { isSame, stepOf, stepped } from '../draft/amounts.js';
import { withAmount } from '../draft/change-draft.js';
import type { VisitDraft } from '../draft/draft.js';
import { ofLine } from '../draft/trouble.js';
import { StepButton } from '../parts/step-button.js';
import { LotChoice } from './lot-choice.js';
import type { OwnLine } from './usage-groups.js';
import css from './usage-panel.module.css';

interface Props {
  readonly line: OwnLine;
  readonly name: string;
  readonly amount: string;
  readonly wrong: string | undefined;
}

/** Another amount, another lot, or not at all. */
export function LineEditor({ line, name, amount, wrong }: Props) {
  const t = useText();
  const format = useFormat();
  const { draft, change, settle } = useChairside();
  const [lots, setLots] = useState(false);
  const { key, of } = line;
  const words = t.chairside.usage;
  const added = draft.added.some((each) => each.key === key);
  const put = (next: string) => {
    settle(ofLine(key));
    change((old) =>
      added
        ? withAddedAmount(old, key, next)
        : withAmount(old, key, isSame(next, of.planned) ? null : next),
    );
  };
  return (
    <div className={css.editor}>
      <Stepper
        name={name}
        amount={amount}
        unit={of.consumable.unit}
        wrong={wrong}
        onAmount={put}
        around={added ? amount : of.planned}
      />
      <div className={css.ways}>
        {!added && !isSame(amount, of.planned) && (
          <Button variant="subtle" onClick={() => put(of.planned)}>
            {words.asPlanned} ({format.quantity(of.planned, of.consumable.unit)})
          </Button>
        )}
        <Button variant="subtle" aria-expanded={lots} onClick={() => setLots(!lots)}>
          {words.otherLot}
        </Button>
        {added && (
          <Button
            variant="subtle"
            onClick={() =>
              change((old) => ({ ...old, added: old.added.filter((each) => each.key !== key) }))
            }
          >
            {words.remove}
          </Button>
        )}
      </div>
      {lots && <LotChoice consumable={of.consumable} />}
    </div>
  );
}

function withAddedAmount(draft: VisitDraft, key: string, dispensed: string): VisitDraft {
  const added = draft.added.map((each) => (each.key === key ? { ...each, dispensed } : each));
  return { ...draft, added };
}

interface StepperProps {
  readonly name: string;
  readonly amount: string;
  readonly unit: string;
  /** What a step is measured by. */
  readonly around: string;
  readonly wrong: string | undefined;
  readonly onAmount: (amount: string) => void;
}

function Stepper({ name, amount, unit, around, wrong, onAmount }: StepperProps) {
  const t = useText();
  const format = useFormat();
  const [typed, setTyped] = useState(format.number(amount));
  const [unread, setUnread] = useState(false);
  useEffect(() => {
    setTyped(format.number(amount));
    setUnread(false);
  }, [amount, format]);
  const words = t.chairside.usage;
  const step = stepOf(unit, around);
  const read = () => {
    const value = asDecimal(typed);
    const isWrong = value === undefined || value.startsWith('-');
    setUnread(isWrong);
    if (!isWrong && !isSame(value, amount)) onAmount(value);
  };
  return (
    <div className={css.stepper}>
      <StepButton
        sign="-"
        label={words.less(name)}
        disabled={isSame(amount, '0')}
        onStep={() => onAmount(stepped(amount, step, -1))}
      />
      <TextInput
        aria-label={words.amount(name)}
        inputMode="decimal"
        autoComplete="off"
        value={typed}
        error={unread || wrong !== undefined}
        onChange={(event) => setTyped(event.currentTarget.value)}
        onBlur={read}
        onKeyDown={(event) => {
          if (event.key === 'Enter') read();
        }}
      />
      <span>{format.unitName(amount, unit)}</span>
      <StepButton
        sign="+"
        label={words.more(name)}
        onStep={() => onAmount(stepped(amount, step, 1))}
      />
      {(unread || wrong !== undefined) && (
        <p className={css.wrong} role="alert">
          {unread ? t.ui.decimal : wrong}
        </p>
      )}
    </div>
  );
}
