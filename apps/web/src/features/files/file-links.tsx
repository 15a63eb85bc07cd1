import { useSpeaking } from '../../text/text-provider.js';
import css from './files.module.css';
import { type FileKind, formsOf } from './kinds.js';

interface Props {
  readonly kind: FileKind;
  /** Whether it is the list to fill in, not what the book has. */
  readonly empty?: boolean;
  readonly label: (kind: string, form: string) => string;
}

/** A list as files of the service, one link for each form. */
export function FileLinks({ kind, empty = false, label }: Props) {
  const { language, text } = useSpeaking();
  const w = text.files;
  return (
    <span className={css.links}>
      {formsOf(kind).map((form) => (
        <a
          key={form}
          href={`/api/exports/${empty ? 'empty/' : ''}${kind}.${form}?language=${language}`}
          aria-label={label(w.kinds[kind], form.toUpperCase())}
          download
        >
          {form.toUpperCase()}
        </a>
      ))}
    </span>
  );
}
