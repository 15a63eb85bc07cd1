import { Button } from '@mantine/core';
import { useText } from '../text/text-provider.js';
import { Dialog } from './dialog.js';
import { TextField } from './fields.js';
import { Form, FormActions, SubmitButton } from './form.js';
import { useForm } from './use-form.js';

interface Props {
  readonly opened: boolean;
  readonly onClose: () => void;
  /** What will be reversed, in a sentence with its figures. */
  readonly what: string;
  readonly reverse: (note: string) => Promise<unknown>;
}

/** Undo in a book that forgets nothing: a counter-entry, with a reason. */
export function ConfirmReversal({ opened, onClose, what, reverse }: Props) {
  const t = useText();
  const form = useForm({
    initial: { note: '' },
    check: ({ note }) => (note.trim() === '' ? { note: t.ui.required } : {}),
    send: ({ note }) => reverse(note.trim()),
    onDone: onClose,
  });
  return (
    <Dialog title={t.ui.reversal.title} opened={opened} onClose={onClose}>
      <Form form={form}>
        <p>{what}</p>
        <p>{t.ui.reversal.explain}</p>
        <TextField label={t.ui.reversal.reason} {...form.field('note')} data-autofocus />
        <FormActions>
          <SubmitButton form={form}>{t.ui.reversal.confirm}</SubmitButton>
          <Button variant="default" onClick={onClose}>
            {t.ui.reversal.keep}
          </Button>
        </FormActions>
      </Form>
    </Dialog>
  );
}
