import { getRouteApi } from '@tanstack/react-router';
import { useEffect, useRef } from 'react';
import { useScanner } from '../../app/scan/use-scanner.js';
import { useText } from '../../text/text-provider.js';
import { TextField } from '../../ui/fields.js';
import { Form, SubmitButton } from '../../ui/form.js';
import { useForm } from '../../ui/use-form.js';
import css from './trace-form.module.css';

const route = getRouteApi('/in/trace');

interface Props {
  readonly started: boolean;
}

/** One field for whatever is at hand: typed, or read by a scanner that ends with Enter. */
export function TraceForm({ started }: Props) {
  const { q } = route.useSearch();
  const scanner = useTraceScan();
  return (
    <>
      <Field key={q ?? ''} typed={q ?? ''} started={started} />
      <div className={`${css.scan ?? ''} tb-screen-only`}>
        {scanner.button}
        {scanner.note}
      </div>
    </>
  );
}

/** A label leads to its lot; a plain number is looked for like one that was typed. */
function useTraceScan() {
  const { scan } = useText();
  const navigate = route.useNavigate();
  return useScanner({
    unknown: 'pass',
    onPlain: (text) => void navigate({ search: { q: text } }),
    onThing: ({ lotId, lotNumber }) => {
      if (lotId !== null) void navigate({ search: { lotId } });
      else if (lotNumber !== null) void navigate({ search: { q: lotNumber } });
      else return scan.trace.noLot;
      return undefined;
    },
  });
}

function Field({ typed, started }: Props & { readonly typed: string }) {
  const t = useText();
  const navigate = route.useNavigate();
  const place = useRef<HTMLDivElement>(null);
  // A scanner types at once; nothing else on the empty screen could want the keys.
  useEffect(() => {
    if (!started) place.current?.querySelector('input')?.focus();
  }, [started]);
  const form = useForm({
    initial: { q: typed },
    check: ({ q }) => {
      const words = q.trim();
      if (words === '') return { q: t.ui.required };
      return words.length > 60 ? { q: t.trace.tooLong } : {};
    },
    send: ({ q }) => Promise.resolve(q.trim()),
    onDone: (words) => void navigate({ search: { q: words } }),
  });
  return (
    <div ref={place} className={`${css.place ?? ''} tb-screen-only`}>
      <search>
        <Form form={form}>
          <div className={css.row}>
            <TextField
              label={t.trace.input}
              hint={t.trace.inputHint}
              {...form.field('q')}
              autoComplete="off"
            />
            <SubmitButton form={form}>{t.trace.submit}</SubmitButton>
          </div>
        </Form>
      </search>
    </div>
  );
}
