import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { CheckField, TextField } from '../../ui/fields.js';
import { FieldGroup, Form, FormActions, SubmitButton } from '../../ui/form.js';
import { notify } from '../../ui/notice-store.js';
import { useForm } from '../../ui/use-form.js';
import { changeNoticeSettings, type NoticeSettings } from './api/notice-settings.js';
import css from './parts.module.css';
import { TrialButton } from './trial-button.js';

interface Values {
  readonly webhookOn: boolean;
  readonly webhookUrl: string;
  readonly newWebhookSecret: boolean;
}

/** Messages for another program, signed. */
export function WebhookForm({ settings }: { readonly settings: NoticeSettings }) {
  const t = useText();
  const w = t.setupMessages;
  const { book } = useBooking({ send: changeNoticeSettings, changes: [['notice-settings']] });
  const initial: Values = {
    webhookOn: settings.webhookOn,
    webhookUrl: settings.webhookUrl ?? '',
    newWebhookSecret: false,
  };
  const form = useForm({
    initial,
    check: ({ webhookOn, webhookUrl }) => ({
      webhookUrl: webhookOn && webhookUrl.trim() === '' ? t.ui.required : undefined,
    }),
    send: ({ webhookOn, webhookUrl, newWebhookSecret }) =>
      book({ webhookOn, webhookUrl: webhookUrl.trim() || null, newWebhookSecret }),
    onDone: () => {
      form.set('newWebhookSecret', false);
      notify({ tone: 'done', text: w.saved });
    },
  });
  return (
    <Form form={form}>
      <FieldGroup title={w.webhook} hint={w.webhookHint}>
        <CheckField label={w.webhookOn} {...form.flag('webhookOn')} />
        <TextField
          label={w.address}
          placeholder="https://"
          maxLength={2000}
          {...form.field('webhookUrl')}
        />
        {settings.webhookSecret !== null && (
          <>
            <p className={css.secret}>
              {w.secret} <code>{settings.webhookSecret}</code>
            </p>
            <CheckField label={w.newSecret} {...form.flag('newWebhookSecret')} />
          </>
        )}
      </FieldGroup>
      <FormActions>
        <SubmitButton form={form}>{w.saveWebhook}</SubmitButton>
        {settings.webhookUrl !== null && <TrialButton channel="webhook" />}
      </FormActions>
    </Form>
  );
}
