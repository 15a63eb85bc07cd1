import { NativeSelect, useMantineColorScheme } from '@mantine/core';
import { LANGUAGES, type Language } from '../text/language.js';
import { useSpeaking } from '../text/text-provider.js';

const SCHEMES = ['auto', 'light', 'dark'] as const;

export function LanguageSwitch() {
  const { language, text, speak } = useSpeaking();
  const choose = (wanted: string) => {
    const found: Language | undefined = LANGUAGES.find(({ id }) => id === wanted)?.id;
    if (found) speak(found);
  };
  return (
    <NativeSelect
      size="sm"
      label={text.account.language}
      value={language}
      data={LANGUAGES.map(({ id, name }) => ({ value: id, label: name }))}
      onChange={(event) => choose(event.currentTarget.value)}
    />
  );
}

export function ThemeSwitch() {
  const { text } = useSpeaking();
  const { colorScheme, setColorScheme } = useMantineColorScheme();
  const choose = (wanted: string) => {
    const found = SCHEMES.find((scheme) => scheme === wanted);
    if (found) setColorScheme(found);
  };
  return (
    <NativeSelect
      size="sm"
      label={text.account.theme}
      value={colorScheme}
      data={SCHEMES.map((scheme) => ({ value: scheme, label: text.account.themes[scheme] }))}
      onChange={(event) => choose(event.currentTarget.value)}
    />
  );
}
