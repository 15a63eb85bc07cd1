import { useEffect, useRef } from 'react';

/**
 * Of a list in which things are taken away: when one is gone and the keyboard's place with it, the
 * keyboard stands on the first thing to press or to type in within `place`.
 */
export function useFocusKept<Place extends HTMLElement = HTMLDivElement>(count: number) {
  const place = useRef<Place>(null);
  const before = useRef(count);
  useEffect(() => {
    const fewer = count < before.current;
    before.current = count;
    if (!fewer || document.activeElement !== document.body) return;
    place.current?.querySelector<HTMLElement>(':is(button, input):not(:disabled)')?.focus();
  }, [count]);
  return place;
}
