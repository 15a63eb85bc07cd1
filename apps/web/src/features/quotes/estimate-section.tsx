import { Button, NativeSelect } from '@mantine/core';
import { useState } from 'react';
import { useSpeaking, useText } from '../../text/text-provider.js';
import { Section } from '../../ui/section.js';
import { useReport } from '../../ui/use-report.js';
import css from './answer.module.css';
import type { Quote, Way } from './api/make-quote.js';
import { printEstimate } from './api/print-estimate.js';
import type { QuoteQuestion } from './question.js';
import { codeOf } from './ways.js';

const LANGUAGES = ['en', 'de'] as const;
type Language = (typeof LANGUAGES)[number];

interface Props {
  readonly asked: QuoteQuestion;
  readonly quote: Quote;
  readonly way: Way;
  readonly language: Language | undefined;
  readonly onLanguage: (language: Language) => void;
}

/** Shows a PDF in a window of its own; where the browser opens none, it is downloaded. */
function openPdf(pdf: Blob, name: string): void {
  const address = URL.createObjectURL(pdf);
  // The window needs the address for as long as it loads; after a minute it has.
  window.setTimeout(() => URL.revokeObjectURL(address), 60_000);
  if (window.open(address, '_blank') !== null) return;
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
}

/** The estimate that a patient takes home, of the way that is shown in detail. */
export function EstimateSection({ asked, quote, way, language, onLanguage }: Props) {
  const w = useText().quotes;
  const speaking = useSpeaking().locale.startsWith('de') ? 'de' : 'en';
  const chosen = language ?? speaking;
  const report = useReport();
  const [isBusy, setBusy] = useState(false);
  const print = () => {
    setBusy(true);
    printEstimate({ ...asked, way: way.way as NonNullable<Way['way']> }, chosen)
      .then((pdf) => openPdf(pdf, w.estimate.file(quote.chartReference ?? '')))
      .catch(report)
      .finally(() => setBusy(false));
  };
  const nobody = quote.chartReference === null;
  return (
    <Section title={w.estimate.title} hint={w.estimate.hint(w.ways[codeOf(way)])}>
      <div className={`${css.choice ?? ''} tb-screen-only`}>
        <NativeSelect
          label={w.estimate.language}
          value={chosen}
          data={LANGUAGES.map((value) => ({ value, label: w.estimate.languages[value] }))}
          onChange={(event) =>
            onLanguage(LANGUAGES.find((each) => each === event.currentTarget.value) ?? 'en')
          }
        />
        <Button
          variant="default"
          onClick={print}
          loading={isBusy}
          disabled={nobody}
          aria-describedby={nobody ? 'estimate-needs' : undefined}
        >
          {w.estimate.print}
        </Button>
      </div>
      {nobody && (
        <p id="estimate-needs" className={css.unpriced}>
          {w.estimate.needsChart}
        </p>
      )}
    </Section>
  );
}
