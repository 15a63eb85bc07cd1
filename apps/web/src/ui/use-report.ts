import { useCallback } from 'react';
import { useText } from '../text/text-provider.js';
import { notify } from './notice-store.js';
import { problemWords } from './problem-words.js';

/** For errors of actions without a form: `book(body).catch(report)`. */
export function useReport(): (error: unknown) => void {
  const t = useText();
  return useCallback(
    (error: unknown) => {
      const text = problemWords(t, error);
      if (text === undefined) throw error;
      notify({ tone: 'problem', text });
    },
    [t],
  );
}
