import { useSpeaking, useText } from '../../text/text-provider.js';
import { PrintButton } from '../../ui/print-button.js';
import { addressOf } from './choice.js';
import css from './report-files.module.css';

const FORMS = ['csv', 'xlsx', 'pdf'] as const;

interface Props {
  /** As the service calls it: 'waste' is /api/reports/waste.csv. */
  readonly report: string;
  readonly asked: Readonly<Record<string, string | undefined>>;
}

/** What is on the screen as a file, made by the service, and on paper. */
export function ReportFiles({ report, asked }: Props) {
  const t = useText();
  // English is what the service takes by itself.
  const lang = useSpeaking().locale.startsWith('de') ? 'de' : undefined;
  return (
    <>
      <p className={css.files}>
        <span aria-hidden="true">{t.costs.files.take}</span>
        {FORMS.map((form) => (
          <a
            key={form}
            href={addressOf(`/api/reports/${report}.${form}`, { ...asked, lang })}
            aria-label={t.costs.files.download(form.toUpperCase())}
            download
          >
            {form.toUpperCase()}
          </a>
        ))}
      </p>
      <PrintButton />
    </>
  );
}
