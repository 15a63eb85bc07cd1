import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { CheckField, NoteField, SelectField } from '../../ui/fields.js';
import { FieldGroup, FieldRow, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { changeNoticeSettings, type NoticeSettings } from './api/notice-settings.js';
import { TrialButton } from './trial-button.js';

interface Values {
  readonly digestOn: boolean;
  /** One address on a line. */
  readonly digestTo: string;
  readonly digestHour: string;
  readonly digestLanguage: string;
}

const HOURS = Array.from({ length: 24 }, (_, hour) => String(hour));

const addressesOf = (typed: string) =>
  typed
    .split(/[\n,;]/)
    .map((one) => one.trim())
    .filter((one) => one !== '');

/** The daily mail. */
export function DigestForm({ settings }: { readonly settings: NoticeSettings }) {
  const t = useText();
  const w = t.setupMessages;
  const { book } = useBooking({ send: changeNoticeSettings, changes: [['notice-settings']] });
  const initial: Values = {
    digestOn: settings.digestOn,
    digestTo: settings.digestTo.join('\n'),
    digestHour: String(settings.digestHour),
    digestLanguage: settings.digestLanguage,
  };
  const form = useForm({
    initial,
    check: ({ digestOn, digestTo }) => ({
      digestTo: digestOn && addressesOf(digestTo).length === 0 ? t.ui.required : undefined,
    }),
    fieldOf: (path) => (path.startsWith('digestTo') ? 'digestTo' : path),
    send: (values) =>
      book({
        digestOn: values.digestOn,
        digestTo: addressesOf(values.digestTo).map((address) => ({ address })),
        digestHour: Number(values.digestHour),
        digestLanguage: values.digestLanguage === 'de' ? 'de' : 'en',
      }),
    onDone: () => notify({ tone: 'done', text: w.saved }),
  });
  return (
    <Form form={form}>
      <FieldGroup title={w.digest} hint={settings.mailServer ? w.digestHint : w.noServer}>
        <CheckField label={w.digestOn} {...form.flag('digestOn')} />
        <NoteField label={w.digestTo} hint={w.digestToHint} {...form.field('digestTo')} />
        <FieldRow>
          <SelectField
            label={w.hour}
            choices={HOURS.map((hour) => ({ value: hour, label: w.from(hour) }))}
            {...form.field('digestHour')}
          />
          <SelectField
            label={w.language}
            choices={[
              { value: 'en', label: 'English' },
              { value: 'de', label: 'Deutsch' },
            ]}
            {...form.field('digestLanguage')}
          />
        </FieldRow>
      </FieldGroup>
      <FormActions>
        <SubmitButton form={form}>{w.saveDigest}</SubmitButton>
        {settings.mailServer && settings.digestTo.length > 0 && <TrialButton channel="digest" />}
      </FormActions>
    </Form>
  );
}
