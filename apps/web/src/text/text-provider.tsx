import { createContext, type ReactNode, useCallback, useContext, useEffect, useState } from 'react';
import { type Language, loadText, localeFor, rememberLanguage } from './language.js';
import type { Text } from './text.js';

interface Speaking {
  readonly language: Language;
  readonly locale: string;
  readonly text: Text;
  readonly speak: (language: Language) => void;
}

const SpeakingContext = createContext<Speaking | undefined>(undefined);

interface Props {
  readonly first: { readonly language: Language; readonly text: Text };
  readonly children: ReactNode;
}

export function TextProvider({ first, children }: Props) {
  const [now, setNow] = useState(first);
  const speak = useCallback((language: Language) => {
    rememberLanguage(language);
    void loadText(language).then((text) => setNow({ language, text }));
  }, []);
  useEffect(() => {
    document.documentElement.lang = now.language;
  }, [now.language]);
  const locale = localeFor(now.language);
  return <SpeakingContext value={{ ...now, locale, speak }}>{children}</SpeakingContext>;
}

export function useSpeaking(): Speaking {
  const speaking = useContext(SpeakingContext);
  if (!speaking) throw new Error('There is no TextProvider around this');
  return speaking;
}

/** Every word on a screen: `const t = useText(); t.today.title`. */
export function useText(): Text {
  return useSpeaking().text;
}
