import { useEffect, useRef } from 'react';

/** After the next drawing the keyboard stands on what the selector finds within `place`. */
export function useFocusAfter() {
  const place = useRef<HTMLDivElement>(null);
  const wanted = useRef<string | undefined>(undefined);
  useEffect(() => {
    if (wanted.current === undefined) return;
    place.current?.querySelector<HTMLElement>(wanted.current)?.focus();
    wanted.current = undefined;
  });
  const focusAfter = (selector: string) => {
    wanted.current = selector;
  };
  return { place, focusAfter };
}
