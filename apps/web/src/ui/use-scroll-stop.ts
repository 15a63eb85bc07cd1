import { type RefCallback, useCallback } from 'react';

/** Makes a box that scrolls sideways a stop of the keyboard, for as long as it has to scroll. */
export function useScrollStop(): RefCallback<HTMLElement> {
  return useCallback((box: HTMLElement | null) => {
    if (!box) return;
    const look = () => {
      if (box.scrollWidth > box.clientWidth) box.tabIndex = 0;
      else box.removeAttribute('tabindex');
    };
    const observer = new ResizeObserver(look);
    observer.observe(box);
    if (box.firstElementChild) observer.observe(box.firstElementChild);
    return () => observer.disconnect();
  }, []);
}
