import { Button } from '@mantine/core';
import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { CheckField, TextField } from '../../ui/fields.js';
import { Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import type { Template } from './api/get-template.js';
import { changeTemplate } from './api/save-template.js';

const route = getRouteApi('/in/setup/templates/$templateId');

export function RenameDialog({ template }: { readonly template: Template }) {
  const w = useText().setupTemplates;
  const { rename } = route.useSearch();
  const navigate = route.useNavigate();
  const close = () =>
    void navigate({ search: (old) => ({ ...old, rename: undefined }), resetScroll: false });
  return (
    <Dialog title={w.renameTitle} opened={rename !== undefined} onClose={close}>
      <RenameForm template={template} onClose={close} />
    </Dialog>
  );
}

interface Props {
  readonly template: Template;
  readonly onClose: () => void;
}

function RenameForm({ template, onClose }: Props) {
  const t = useText();
  const w = t.setupTemplates;
  const { book } = useBooking({
    send: ({ name, active }: { name: string; active: boolean }) =>
      changeTemplate(template.id, { name: name.trim(), active }),
    changes: [['procedure-templates']],
  });
  const form = useForm({
    initial: { name: template.name, active: template.active },
    check: ({ name }) => ({ name: name.trim() === '' ? t.ui.required : undefined }),
    send: book,
    onDone: ({ name }) => {
      notify({ tone: 'done', text: t.setup.saved(name) });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <TextField
        label={w.name}
        hint={w.renameHint}
        {...form.field('name')}
        maxLength={200}
        data-autofocus
      />
      <CheckField label={t.setup.inUse} hint={t.setup.inUseHint} {...form.flag('active')} />
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
