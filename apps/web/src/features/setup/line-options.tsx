import { Checkbox, NativeSelect } from '@mantine/core';
import { REASONS } from '#lib/dentition';
import { useText } from '../../text/text-provider.js';
import { DRIVERS } from './drivers.js';
import css from './editor.module.css';
import type { LineActions } from './line-actions.js';
import { type DraftLine, type Flag, mayShareDose } from './template-draft.js';

interface Props extends Pick<LineActions, 'change' | 'errorOf'> {
  readonly line: DraftLine;
  readonly what: string;
}

/** When a line counts: for which reasons, again in a retake, and what it is counted by. */
export function LineOptions({ line, what, change, errorOf }: Props) {
  const w = useText().setupTemplates;
  const { key, reasons } = line;
  return (
    <fieldset className={css.options} aria-label={w.optionsOf(what)}>
      <NativeSelect
        label={w.countedBy}
        value={line.driver}
        error={errorOf(key, 'driver')}
        data={DRIVERS.map((driver) => ({ value: driver, label: w.drivers[driver].title }))}
        onChange={(event) => {
          const driver = DRIVERS.find((each) => each === event.currentTarget.value);
          if (driver) change(key, { driver });
        }}
      />
      <fieldset className={css.reasons}>
        <legend>{w.onlyFor}</legend>
        <div>
          {REASONS.map((reason) => (
            <Checkbox
              key={reason}
              label={w.reasons[reason]}
              checked={reasons.includes(reason)}
              onChange={(event) => {
                const marked = event.currentTarget.checked;
                const next = REASONS.filter((each) =>
                  each === reason ? marked : reasons.includes(each),
                );
                change(key, { reasons: next });
              }}
            />
          ))}
        </div>
        <p className={css.quiet}>{w.onlyForHint}</p>
      </fieldset>
      <Checkbox
        label={w.everyAttempt}
        checked={line.everyAttempt}
        onChange={(event) => change(key, { everyAttempt: event.currentTarget.checked })}
      />
      <div className={css.flags}>
        {mayShareDose(line) && (
          <FlagSelect
            label={w.dose}
            words={w.doses}
            value={line.sharesDose}
            onChoose={(sharesDose) => change(key, { sharesDose })}
          />
        )}
        <FlagSelect
          label={w.numb}
          words={w.numbs}
          value={line.anaesthetic}
          onChoose={(anaesthetic) => change(key, { anaesthetic })}
        />
      </div>
    </fieldset>
  );
}

interface FlagProps {
  readonly label: string;
  readonly words: Readonly<Record<'usual' | 'yes' | 'no', string>>;
  readonly value: Flag;
  readonly onChoose: (flag: Flag) => void;
}

function FlagSelect({ label, words, value, onChoose }: FlagProps) {
  return (
    <NativeSelect
      label={label}
      value={value === null ? 'usual' : value ? 'yes' : 'no'}
      data={[
        { value: 'usual', label: words.usual },
        { value: 'yes', label: words.yes },
        { value: 'no', label: words.no },
      ]}
      onChange={(event) => {
        const chosen = event.currentTarget.value;
        onChoose(chosen === 'usual' ? null : chosen === 'yes');
      }}
    />
  );
}
