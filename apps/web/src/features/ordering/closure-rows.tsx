import { Button } from '@mantine/core';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { DateField, TextField } from '../../ui/fields.js';
import { RowButton } from '../../ui/row-button.js';
import { useFocusAfter } from '../../ui/use-focus-after.js';
import css from './parts.module.css';
import type { TypedClosure } from './terms-values.js';

interface Props {
  readonly closures: readonly TypedClosure[];
  readonly errorAt: (path: string) => string | undefined;
  readonly onChange: (closures: readonly TypedClosure[]) => void;
}

/** The days on which a supplier is closed besides its weekdays. */
export function ClosureRows({ closures, errorAt, onChange }: Props) {
  const w = useText().orderingSettings;
  const { today } = useSession();
  const { place, focusAfter } = useFocusAfter();
  const put = (at: number, part: Partial<TypedClosure>) =>
    onChange(closures.map((each, i) => (i === at ? { ...each, ...part } : each)));
  const field = (i: number, name: 'firstDay' | 'lastDay' | 'note') => ({
    name: `closures[${i}].${name}`,
    value: closures[i]?.[name] ?? '',
    onValue: (value: string) => put(i, { [name]: value }),
    error: errorAt(`closures[${i}].${name}`),
  });
  const key = Math.max(0, ...closures.map((each) => each.key)) + 1;
  const focusOn = (at: number) =>
    focusAfter(at < 0 ? 'button' : `[name="closures[${at}].firstDay"]`);
  return (
    <div ref={place} className={css.rows}>
      {closures.map((closure, i) => (
        <div key={closure.key} className={css.triple}>
          <DateField label={w.first} {...field(i, 'firstDay')} />
          <DateField label={w.last} {...field(i, 'lastDay')} />
          <TextField label={w.closureNote} {...field(i, 'note')} maxLength={200} />
          <RowButton
            label={w.removeClosure(String(i + 1))}
            onClick={() => {
              onChange(closures.filter((each) => each !== closure));
              focusOn(Math.min(i, closures.length - 2));
            }}
          >
            {w.remove}
          </RowButton>
        </div>
      ))}
      <div>
        <Button
          variant="default"
          onClick={() => {
            onChange([...closures, { key, firstDay: today, lastDay: today, note: '' }]);
            focusOn(closures.length);
          }}
        >
          {w.addClosure}
        </Button>
      </div>
    </div>
  );
}
