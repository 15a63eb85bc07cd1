import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { Loaded } from '../../ui/loaded.js';
import { PageHead } from '../../ui/page-head.js';
import { PrintButton } from '../../ui/print-button.js';
import { Answer } from './answer.js';
import { quoteQuery } from './api/make-quote.js';
import type { QuoteQuestion } from './question.js';
import { QuestionForm } from './question-form.js';
import css from './question-form.module.css';
import { useQuestion } from './use-question.js';

const route = getRouteApi('/in/quotes');

/** The same work done in different ways, side by side. Everything is in the address. */
export function QuotesScreen() {
  const w = useText().quotes;
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const [asks, setAsks] = useState(0);
  const question = useQuestion(search, (words) => {
    void navigate({ search: (old) => ({ ...old, ...words }), resetScroll: false });
    setAsks((before) => before + 1);
  });
  return (
    <>
      <PageHead title={w.title} lead={w.lead}>
        {question.asked && <PrintButton />}
      </PageHead>
      <QuestionForm question={question} />
      {question.asked && <Asked asked={question.asked} isStale={question.isStale} asks={asks} />}
      <p className={css.law}>{w.law}</p>
      <Caution />
    </>
  );
}

interface AskedProps {
  readonly asked: QuoteQuestion;
  readonly isStale: boolean;
  readonly asks: number;
}

function Asked({ asked, isStale, asks }: AskedProps) {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const quote = useQuery(quoteQuery(asked));
  return (
    <Loaded query={quote}>
      {(data) => (
        <Answer
          asked={asked}
          quote={data}
          words={search}
          isStale={isStale}
          asks={asks}
          onChange={(part) =>
            void navigate({
              search: (old) => ({ ...old, ...part }),
              replace: true,
              resetScroll: false,
            })
          }
        />
      )}
    </Loaded>
  );
}
