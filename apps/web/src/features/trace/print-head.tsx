import { useEffect, useState } from 'react';
import { useSession } from '../../app/session.js';
import { useFormat } from '../../app/use-format.js';
import { useText } from '../../text/text-provider.js';
import css from './print-head.module.css';

interface Props {
  readonly what: 'lot' | 'chart' | 'visit';
}

/** Whose paper this is, and of when: only in print. */
export function PrintHead({ what }: Props) {
  const t = useText();
  const format = useFormat();
  const { practice, person } = useSession();
  const [printedAt, setPrintedAt] = useState(() => new Date().toISOString());
  useEffect(() => {
    const stamp = () => setPrintedAt(new Date().toISOString());
    window.addEventListener('beforeprint', stamp);
    return () => window.removeEventListener('beforeprint', stamp);
  }, []);
  const words = t.trace.print;
  return (
    <div className={`${css.head ?? ''} tb-print-only`}>
      <p>
        <strong>{practice.name}</strong>
        <span>{words.what[what]}</span>
      </p>
      <p>
        <span>{`${words.printed}: ${format.instant(printedAt)}`}</span>
        <span>{`${words.by}: ${person.displayName}`}</span>
      </p>
    </div>
  );
}
