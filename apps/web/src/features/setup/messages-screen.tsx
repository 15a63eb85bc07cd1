import { useQuery } from '@tanstack/react-query';
import { useText } from '../../text/text-provider.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { noticeSettingsQuery } from './api/notice-settings.js';
import { DigestForm } from './digest-form.js';
import css from './parts.module.css';
import { SentMessages } from './sent-messages.js';
import { WebhookForm } from './webhook-form.js';

/** Messages about what needs somebody: a daily mail, a signed webhook, and what went out. */
export function MessagesScreen() {
  const w = useText().setupMessages;
  const settings = useQuery(noticeSettingsQuery);
  return (
    <>
      <PageHead title={w.title} lead={w.lead} />
      <Loaded query={settings}>
        {(data) => (
          <div className={css.forms}>
            <DigestForm settings={data} />
            <WebhookForm settings={data} />
          </div>
        )}
      </Loaded>
      <SentMessages />
    </>
  );
}
