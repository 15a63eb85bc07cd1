import { Checkbox } from '@mantine/core';
import { useEffect, useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { DecimalField, WholeField } from '../../ui/fields.js';
import css from './question-form.module.css';
import type { Row } from './row.js';
import type { Question } from './use-question.js';

interface Props {
  readonly row: Row;
  readonly path: string;
  readonly question: Question;
  readonly onChange: (part: Partial<Row>) => void;
}

const SIDES = ['lengthMm', 'widthMm', 'depthMm'] as const;
const TYPED = ['retakes', ...SIDES] as const;

/** What is seldom said of a restoration, folded away: retakes, anaesthetic, a measured cavity. */
export function RareFields({ row, path, question, onChange }: Props) {
  const w = useText().quotes.rare;
  const errorAt = (name: string) => question.form.errorAt(`${path}.${name}`);
  const isWrong = TYPED.some((name) => errorAt(name) !== undefined);
  const said = saidOf(row, w);
  const [open, setOpen] = useState(isWrong);
  // What is wrong has to be seen; it stays open when it is put right.
  useEffect(() => {
    if (isWrong) setOpen(true);
  }, [isWrong]);
  const field = (name: (typeof TYPED)[number]) => ({
    name: `${path}.${name}`,
    label: w[name],
    value: row[name],
    error: errorAt(name),
    onValue: (value: string) => onChange({ [name]: value }),
  });
  return (
    <details
      className={css.rare}
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        {w.more}
        {said !== '' && <span>{said}</span>}
      </summary>
      <div className={css.rareFields}>
        <WholeField {...field('retakes')} maxLength={1} placeholder="0" />
        {SIDES.map((name) => (
          <DecimalField key={name} {...field(name)} unit="mm" maxLength={7} />
        ))}
        <Checkbox
          name={`${path}.withoutAnaesthetic`}
          label={w.withoutAnaesthetic}
          checked={row.withoutAnaesthetic}
          onChange={(event) => onChange({ withoutAnaesthetic: event.currentTarget.checked })}
        />
      </div>
      <p className={css.under}>{w.hint}</p>
    </details>
  );
}

type Words = ReturnType<typeof useText>['quotes']['rare'];

/** '2 retakes, without anaesthetic, 4 × 3 × 2.5 mm' */
function saidOf(row: Row, w: Words): string {
  const sides = SIDES.map((name) => row[name].trim());
  const retakes = row.retakes.trim();
  return [
    ...(/^[1-9]$/.test(retakes) ? [w.again(Number(retakes))] : []),
    ...(row.withoutAnaesthetic ? [w.numbless] : []),
    ...(sides.every((side) => side !== '') ? [`${sides.join(' × ')} mm`] : []),
    ...(sides[2] !== '' && sides[0] === '' && sides[1] === '' ? [w.deep(sides[2] ?? '')] : []),
  ].join(', ');
}
