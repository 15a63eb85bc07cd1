import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { useText } from '../../text/text-provider.js';
import { consumablesQuery, feesQuery, templatesQuery } from './api/choices.js';
import css from './question-form.module.css';
import { RestorationFields } from './restoration-fields.js';
import { changed, MOST_ROWS, nextRow, type Row } from './row.js';
import { shadesOf } from './shades.js';
import type { Question } from './use-question.js';

interface Props {
  readonly question: Question;
}

/** Puts the cursor into a row that was just added, or beside one that was taken away. */
function useFocus() {
  const place = useRef<HTMLDivElement>(null);
  const wanted = useRef<string | undefined>(undefined);
  useEffect(() => {
    if (wanted.current === undefined) return;
    const field = place.current?.querySelector<HTMLElement>(wanted.current);
    wanted.current = undefined;
    field?.focus();
    if (field instanceof HTMLInputElement) field.select();
  });
  return {
    place,
    focus: (selector: string) => {
      wanted.current = selector;
    },
  };
}

export function RestorationRows({ question }: Props) {
  const w = useText().quotes;
  const { form, notation, templateOf } = question;
  const rows = form.values.restorations;
  const { place, focus } = useFocus();
  const templates = useQuery(templatesQuery).data?.items ?? [];
  const shades = shadesOf(useQuery(consumablesQuery).data?.items ?? []);
  const fees = useQuery(feesQuery(form.values.quotedOn || undefined)).data?.items ?? [];
  const set = (next: readonly Row[]) => {
    form.set('restorations', next);
    // What was wrong is named by the places of rows, and these have changed.
    for (const path of Object.keys(form.fieldErrors)) {
      if (path.startsWith('restorations')) form.clearAt(path);
    }
  };
  const add = () => {
    const row = nextRow(rows, notation);
    set([...rows, row]);
    focus(`[data-row="${row.key}"] input`);
  };
  const missing = form.errorAt('restorations');
  return (
    <div ref={place} className={css.rows}>
      {rows.map((row, i) => (
        <RestorationFields
          key={row.key}
          row={row}
          path={`restorations[${i}]`}
          place={i + 1}
          template={templateOf(row.templateId)}
          choices={{ templates, shades, fees }}
          question={question}
          onChange={(part) => {
            const next = changed(row, part, notation);
            form.set(
              'restorations',
              rows.map((each) => (each.key === row.key ? next : each)),
            );
            for (const field of Object.keys(part)) form.clearAt(`restorations[${i}].${field}`);
            form.clearAt(`restorations[${i}]`);
          }}
          onRemove={
            rows.length === 1
              ? undefined
              : () => {
                  const beside = rows[i + 1] ?? rows[i - 1];
                  set(rows.filter((each) => each.key !== row.key));
                  focus(`[data-row="${beside?.key ?? ''}"] input`);
                }
          }
        />
      ))}
      {missing !== undefined && (
        <p className={css.wrong} role="alert">
          {missing}
        </p>
      )}
      {rows.length < MOST_ROWS && (
        <Button variant="default" onClick={add}>
          {w.add}
        </Button>
      )}
    </div>
  );
}
