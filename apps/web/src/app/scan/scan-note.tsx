import type { Shape } from '../../api/client.js';
import { useText } from '../../text/text-provider.js';
import { StatusMark } from '../../ui/status-mark.js';
import { useFormat } from '../use-format.js';
import css from './scan.module.css';
import type { ScannedThing } from './thing.js';

/** What is to be said of a scan: what it was and what became of it, or what is wrong with it. */
export type Said =
  | {
      readonly text: string;
      readonly thing: ScannedThing;
      readonly outcome: string | undefined;
    }
  | { readonly text: string; readonly problem: Shape<'LabelProblemDto'> | null }
  | { readonly text: string; readonly sentence: string };

export function ScanNote({ said }: { readonly said: Said | undefined }) {
  return (
    <div role="status" className={`${said ? (css.note ?? '') : ''} tb-screen-only`}>
      {said && <Words said={said} />}
    </div>
  );
}

function Words({ said }: { readonly said: Said }) {
  const t = useText();
  const format = useFormat();
  if ('thing' in said) {
    const { name, lotNumber, expiresOn } = said.thing;
    const parts = [
      name,
      lotNumber === null ? null : t.scan.lot(lotNumber),
      expiresOn === null ? null : t.scan.until(format.day(expiresOn)),
    ].filter((part) => part !== null);
    return (
      <>
        <p>{t.scan.read(parts.join(', '))}</p>
        {said.outcome !== undefined && <p className={css.more}>{said.outcome}</p>}
      </>
    );
  }
  if ('sentence' in said) return <StatusMark tone="caution">{said.sentence}</StatusMark>;
  return <Wrong text={said.text} problem={said.problem} />;
}

interface WrongProps {
  readonly text: string;
  readonly problem: Shape<'LabelProblemDto'> | null;
}

/** What is wrong with a label, and the character that it is about. */
function Wrong({ text, problem }: WrongProps) {
  const t = useText();
  if (problem === null) return <StatusMark tone="danger">{t.scan.notReadable}</StatusMark>;
  const { position, message, code } = problem;
  return (
    <>
      <StatusMark tone="danger">{t.scan.notReadable}</StatusMark>
      <p>{t.scan.codes[code] ?? message}</p>
      <p className={css.more}>
        {t.scan.where(position + 1)}{' '}
        <code className={css.text}>
          {shown(text.slice(Math.max(0, position - 30), position))}
          <mark>{shown(text.charAt(position)) || '…'}</mark>
          {shown(text.slice(position + 1, position + 20))}
        </code>
      </p>
    </>
  );
}

/** Control characters as their pictures: the separator is ␝. */
function shown(text: string): string {
  return [...text]
    .map((one) => {
      const code = one.charCodeAt(0);
      return code < 32 ? String.fromCharCode(0x2400 + code) : one;
    })
    .join('');
}
