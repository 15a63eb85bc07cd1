import { Button } from '@mantine/core';
import { useState } from 'react';
import { useBooking } from '../../api/use-booking.js';
import { useSession } from '../../app/session.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { DateField, TextField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { useForm } from '../../ui/use-form.js';
import { createToken } from './api/tokens.js';
import css from './parts.module.css';

interface Props {
  readonly opened: boolean;
  readonly onClose: () => void;
}

/** Makes a token, then shows its secret: once, and only here. */
export function TokenDialog({ opened, onClose }: Props) {
  const w = useText().setupTokens;
  const [secret, setSecret] = useState<string>();
  const close = () => {
    setSecret(undefined);
    onClose();
  };
  return (
    <Dialog
      title={secret === undefined ? w.addTitle : w.secretTitle}
      opened={opened}
      onClose={close}
      size="lg"
    >
      {secret === undefined ? (
        <TokenForm onMade={setSecret} onClose={close} />
      ) : (
        <Secret secret={secret} onClose={close} />
      )}
    </Dialog>
  );
}

interface FormProps {
  readonly onMade: (secret: string) => void;
  readonly onClose: () => void;
}

function TokenForm({ onMade, onClose }: FormProps) {
  const t = useText();
  const w = t.setupTokens;
  const { today } = useSession();
  const { book } = useBooking({
    send: ({ name, expiresOn }: { name: string; expiresOn: string }, key) =>
      createToken({ id: key, name: name.trim(), expiresOn: expiresOn || null }),
    changes: [['tokens']],
  });
  const form = useForm({
    initial: { name: '', expiresOn: '' },
    check: ({ name, expiresOn }) => ({
      name: name.trim() === '' ? t.ui.required : undefined,
      expiresOn: expiresOn !== '' && expiresOn < today ? w.past : undefined,
    }),
    send: book,
    onDone: ({ secret }) => onMade(secret),
  });
  return (
    <Form form={form}>
      <TextField
        label={w.name}
        placeholder={w.namePlaceholder}
        {...form.field('name')}
        maxLength={120}
        data-autofocus
      />
      <DateField label={w.expires} hint={w.expiresHint} min={today} {...form.field('expiresOn')} />
      <FormActions>
        <SubmitButton form={form}>{w.add}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}

function Secret({ secret, onClose }: { readonly secret: string; readonly onClose: () => void }) {
  const w = useText().setupTokens;
  const [copied, setCopied] = useState(false);
  // A practice may serve its own network without https; the clipboard is not there then.
  const canCopy = 'clipboard' in navigator;
  const copy = () =>
    void navigator.clipboard.writeText(secret).then(
      () => setCopied(true),
      () => setCopied(false),
    );
  return (
    <div className={css.stack}>
      <p>{w.secretHint}</p>
      <code className={css.secret}>{secret}</code>
      <div className={css.buttons}>
        {canCopy && (
          <Button variant="default" onClick={copy} aria-live="polite">
            {copied ? w.copied : w.copy}
          </Button>
        )}
        <Button onClick={onClose} data-autofocus>
          {w.understood}
        </Button>
      </div>
    </div>
  );
}
