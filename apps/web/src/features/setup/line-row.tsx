import { ActionIcon, TextInput } from '@mantine/core';
import { useId, useState } from 'react';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import { ConsumablePicker } from './consumable-picker.js';
import { fullName } from './consumable-words.js';
import { isSharedByVisit } from './drivers.js';
import css from './editor.module.css';
import type { LineActions } from './line-actions.js';
import { LineOptions } from './line-options.js';
import { type DraftLine, mayShareDose, SHADES } from './template-draft.js';
import { reasonWords } from './version-diff.js';

interface Props extends LineActions {
  readonly line: DraftLine;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  /** It was added just now: the person goes on in it. */
  readonly isNew: boolean;
}

export function LineRow(props: Props) {
  const { line, change, errorOf } = props;
  const t = useText();
  const w = t.setupTemplates;
  const [open, setOpen] = useState(false);
  const options = useId();
  const what = line.what === SHADES ? w.shades : line.name || w.newLine;
  const shown = open || errorOf(line.key, 'driver') !== undefined;
  return (
    <li className={css.line} data-line={line.key}>
      <div className={css.fields}>
        <ConsumablePicker
          label={w.consumable}
          value={line.what}
          name={line.name}
          error={errorOf(line.key, 'consumableId')}
          withShades={!isSharedByVisit(line.driver)}
          autoFocus={props.isNew}
          onPick={(picked) =>
            change(
              line.key,
              picked === SHADES
                ? { what: SHADES, name: '', unit: null }
                : { what: picked.id, name: fullName(picked), unit: picked.stockUnit },
            )
          }
        />
        <AmountInput {...props} field="dispensed" label={w.dispensedOf(what)} />
        <AmountInput {...props} field="placed" label={w.placedOf(what)} />
        <Tools
          {...props}
          what={what}
          open={shown}
          options={options}
          onOpen={() => setOpen(!open)}
        />
      </div>
      <Summary line={line} />
      {shown && (
        <div id={options}>
          <LineOptions line={line} what={what} change={change} errorOf={errorOf} />
        </div>
      )}
    </li>
  );
}

interface AmountProps extends Pick<LineActions, 'change' | 'errorOf'> {
  readonly line: DraftLine;
  readonly field: 'dispensed' | 'placed';
  readonly label: string;
}

function AmountInput({ line, field, label, change, errorOf }: AmountProps) {
  const { unitName } = useFormat();
  const w = useText().setupTemplates;
  const stockUnit = line.unit ?? (line.what === SHADES ? w.shadeUnit : '');
  const unit = stockUnit === '' ? '' : unitName('2', stockUnit);
  return (
    <TextInput
      aria-label={label}
      value={line[field]}
      error={errorOf(line.key, field)}
      inputMode="decimal"
      autoComplete="off"
      placeholder={field === 'placed' ? '–' : ''}
      rightSection={field === 'placed' ? null : <span aria-hidden="true">{unit}</span>}
      rightSectionWidth={field === 'placed' ? '0.75rem' : `${unit.length * 0.5 + 1.1}rem`}
      classNames={{ input: css.number ?? '', section: css.unit ?? '' }}
      onChange={(event) => change(line.key, { [field]: event.currentTarget.value })}
    />
  );
}

interface ToolsProps extends Props {
  readonly what: string;
  readonly open: boolean;
  readonly options: string;
  readonly onOpen: () => void;
}

const DRAWINGS = {
  when: 'M4 6h12M4 10h8M4 14h5M15 11l3 3-3 3',
  up: 'M10 16V5M5 9.5L10 4.5l5 5',
  down: 'M10 4v11M5 10.5l5 5 5-5',
  remove: 'M5 5l10 10M15 5L5 15',
} as const;

function Tools({ line, isFirst, isLast, move, remove, what, open, options, onOpen }: ToolsProps) {
  const w = useText().setupTemplates;
  return (
    <div className={css.tools}>
      <Tool
        name="when"
        label={w.optionsOf(what)}
        onClick={onOpen}
        expanded={open}
        {...(open ? { controls: options } : {})}
      />
      <Tool name="up" label={w.up(what)} off={isFirst} onClick={() => move(line.key, -1)} />
      <Tool name="down" label={w.down(what)} off={isLast} onClick={() => move(line.key, 1)} />
      <Tool name="remove" label={w.remove(what)} onClick={() => remove(line.key)} />
    </div>
  );
}

interface ToolProps {
  readonly name: keyof typeof DRAWINGS;
  readonly label: string;
  readonly onClick: () => void;
  readonly off?: boolean;
  readonly expanded?: boolean;
  readonly controls?: string;
}

function Tool({ name, label, onClick, off = false, expanded, controls }: ToolProps) {
  return (
    <ActionIcon
      variant="subtle"
      size={44}
      aria-label={label}
      title={label}
      data-tool={name}
      // Stays a stop of the keyboard, so that moving a line to the end does not lose one's place.
      aria-disabled={off}
      aria-expanded={expanded}
      aria-controls={controls}
      onClick={off ? undefined : onClick}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true" className={css.icon}>
        <path d={DRAWINGS[name]} />
      </svg>
    </ActionIcon>
  );
}

/** Says only what is not as usual. */
function Summary({ line }: { readonly line: DraftLine }) {
  const t = useText();
  const w = t.setupTemplates;
  const parts = [
    ...(line.what !== SHADES ? [] : [line.driver === 'shade' ? w.shadesEach : w.shadesHint]),
    ...(line.reasons.length === 0 ? [] : [reasonWords(line.reasons, t)]),
    ...(line.everyAttempt ? [w.again] : []),
    ...(line.sharesDose && mayShareDose(line) ? [w.sharesDose] : []),
    ...(line.anaesthetic ? [w.anaesthetic] : []),
  ];
  return parts.length === 0 ? null : <p className={css.summary}>{parts.join(' · ')}</p>;
}
