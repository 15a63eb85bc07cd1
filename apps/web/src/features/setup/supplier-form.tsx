import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { Dialog } from '../../ui/dialog.js';
import { CheckField, SelectField, TextField } from '../../ui/fields.js';
import { FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { Loaded } from '../../ui/loaded.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { type Supplier, supplierQuery } from './api/list-suppliers.js';
import { changeSupplier, createSupplier } from './api/save-supplier.js';

const route = getRouteApi('/in/setup/suppliers');

/** The dialogs that the address opens: a new supplier, or changing one. */
export function SupplierDialogs() {
  const t = useText();
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const close = () =>
    void navigate({ search: (old) => ({ ...old, new: undefined, edit: undefined }) });
  return (
    <>
      <Dialog title={t.setupSuppliers.addTitle} opened={search.new !== undefined} onClose={close}>
        <SupplierForm onClose={close} />
      </Dialog>
      <Dialog title={t.setup.change} opened={search.edit !== undefined} onClose={close}>
        {search.edit !== undefined && <ChangeSupplier id={search.edit} onClose={close} />}
      </Dialog>
    </>
  );
}

function ChangeSupplier({ id, onClose }: { readonly id: string; readonly onClose: () => void }) {
  const supplier = useQuery(supplierQuery(id));
  return (
    <Loaded query={supplier}>{(data) => <SupplierForm supplier={data} onClose={onClose} />}</Loaded>
  );
}

interface Props {
  readonly supplier?: Supplier;
  readonly onClose: () => void;
}

type Values = {
  name: string;
  email: string;
  language: Supplier['language'];
  customerNumber: string;
  active: boolean;
};

const LANGUAGES = ['en', 'de'] as const;

function SupplierForm({ supplier, onClose }: Props) {
  const t = useText();
  const w = t.setupSuppliers;
  const { book } = useBooking({
    send: ({ name, email, language, customerNumber, active }: Values, key) => {
      const body = {
        ...{ name: name.trim(), email: email.trim() || null },
        ...{ language, customerNumber: customerNumber.trim() || null },
      };
      return supplier
        ? changeSupplier(supplier.id, { ...body, active })
        : createSupplier({ ...body, id: key });
    },
    changes: [['suppliers']],
  });
  const form = useForm({
    initial: {
      name: supplier?.name ?? '',
      email: supplier?.email ?? '',
      language: supplier?.language ?? 'en',
      customerNumber: supplier?.customerNumber ?? '',
      active: supplier?.active ?? true,
    },
    check: ({ name, email }) => ({
      name: name.trim() === '' ? t.ui.required : undefined,
      email: email.trim() === '' || /^[^\s@]+@[^\s@]+$/.test(email.trim()) ? undefined : w.badEmail,
    }),
    send: book,
    onDone: ({ name }) => {
      notify({ tone: 'done', text: t.setup.saved(name) });
      onClose();
    },
  });
  return (
    <Form form={form}>
      <TextField label={t.setup.name} {...form.field('name')} maxLength={200} data-autofocus />
      <TextField label={w.email} hint={w.emailHint} {...form.field('email')} maxLength={254} />
      <FieldRow>
        <SelectField
          label={w.language}
          hint={w.languageHint}
          choices={LANGUAGES.map((value) => ({ value, label: w.languages[value] }))}
          {...form.field('language')}
        />
        <TextField
          label={w.customerNumber}
          hint={t.setup.optional}
          {...form.field('customerNumber')}
          maxLength={60}
        />
      </FieldRow>
      {supplier && (
        <CheckField label={t.setup.inUse} hint={t.setup.inUseHint} {...form.flag('active')} />
      )}
      <FormActions>
        <SubmitButton form={form}>{t.ui.save}</SubmitButton>
        <Button variant="default" onClick={onClose}>
          {t.ui.cancel}
        </Button>
      </FormActions>
    </Form>
  );
}
