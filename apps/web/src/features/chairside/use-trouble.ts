import { useCallback, useState } from 'react';
import { useText } from '../../text/text-provider.js';
import type { Trouble } from './draft/trouble.js';
import { focusControl } from './parts/focus-control.js';

const NOTHING: Trouble = {};

/** What is wrong with the visit: beside its controls, and in sentences for the rest. */
export function useTrouble() {
  const t = useText();
  const [said, setSaid] = useState(NOTHING);
  const [rest, setRest] = useState<readonly string[]>([]);
  /** Leads to the first control that is wrong. */
  const show = (trouble: Trouble, sentences: readonly string[] = []) => {
    setSaid(trouble);
    setRest(sentences);
    const [first] = Object.keys(trouble);
    if (first !== undefined) focusControl(first);
  };
  const settle = useCallback((...controls: readonly string[]) => {
    setRest([]);
    setSaid((old) =>
      Object.fromEntries(Object.entries(old).filter(([name]) => !controls.includes(name))),
    );
  }, []);
  const marked = Object.keys(said).length > 0 ? [t.chairside.check.look] : [];
  return { said, show, settle, sentences: [...marked, ...rest] };
}
