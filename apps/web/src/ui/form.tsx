import { Button } from '@mantine/core';
import { type ReactNode, useEffect, useRef } from 'react';
import { useText } from '../text/text-provider.js';
import css from './form.module.css';
import type { AnyForm } from './use-form.js';

interface Props {
  readonly form: AnyForm;
  readonly children: ReactNode;
}

/** A form: says above its fields what belongs to none of them, and leads to the first wrong one. */
export function Form({ form, children }: Props) {
  const place = useRef<HTMLFormElement>(null);
  const { rest, refusals } = form;
  useEffect(() => {
    if (refusals === 0) return;
    const first = place.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    (first ?? place.current?.querySelector<HTMLElement>('[role="alert"]'))?.focus();
  }, [refusals]);
  return (
    <form ref={place} className={css.form} noValidate onSubmit={form.submit}>
      {rest.length > 0 && (
        <div role="alert" tabIndex={-1} className={css.problem}>
          {rest.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
      {children}
    </form>
  );
}

interface SubmitProps extends Props {
  /** Where something else is the main thing to do. */
  readonly quiet?: boolean;
}

export function SubmitButton({ form, children, quiet = false }: SubmitProps) {
  const t = useText();
  return (
    <Button
      type="submit"
      variant={quiet ? 'default' : 'filled'}
      loading={form.isSending}
      aria-busy={form.isSending}
    >
      {form.isSending ? t.ui.busy : children}
    </Button>
  );
}

/** The row of buttons at the end. */
export function FormActions({ children }: { readonly children: ReactNode }) {
  return <div className={css.actions}>{children}</div>;
}

/** Fields side by side where there is room. */
export function FieldRow({ children }: { readonly children: ReactNode }) {
  return <div className={css.row}>{children}</div>;
}

interface GroupProps {
  readonly title: string;
  readonly hint?: string;
  readonly children: ReactNode;
}

/** Fields that belong together, under a legend. */
export function FieldGroup({ title, hint, children }: GroupProps) {
  return (
    <fieldset className={css.group}>
      <legend>{title}</legend>
      {hint !== undefined && <p className={css.hint}>{hint}</p>}
      {children}
    </fieldset>
  );
}
