import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useText } from '../../text/text-provider.js';
import { FilterSelect } from '../../ui/filters.js';
import { problemWords } from '../../ui/problem-words.js';
import { type Asked, checkImport } from './api/imports.js';
import { CheckedFile } from './checked-file.js';
import { DropZone } from './drop-zone.js';
import { FileLinks } from './file-links.js';
import css from './files.module.css';
import { type FileKind, KINDS } from './kinds.js';

interface Props {
  readonly kind: FileKind | undefined;
  readonly onKind: (kind: FileKind | undefined) => void;
}

/** Choose what it is, give the file, see what would become of it, bring it in. */
export function BringIn({ kind, onKind }: Props) {
  const w = useText().files;
  const [file, setFile] = useState<File | undefined>(undefined);
  return (
    <div className={css.steps}>
      <div className={css.kind}>
        <FilterSelect
          label={w.bring.kind}
          value={kind}
          all={w.bring.chooseKind}
          choices={KINDS.map((each) => ({ value: each, label: w.kinds[each] }))}
          onChoose={onKind}
        />
        {kind !== undefined && (
          <p className={css.hint}>
            {w.bring.empty} <FileLinks kind={kind} empty label={w.bring.emptyLabel} />
          </p>
        )}
      </div>
      {kind !== undefined && <DropZone file={file} onFile={setFile} />}
      {kind !== undefined && file !== undefined && (
        <GivenFile
          key={`${file.name} ${file.size} ${file.lastModified}`}
          kind={kind}
          file={file}
          onDone={() => setFile(undefined)}
        />
      )}
    </div>
  );
}

interface GivenProps {
  readonly kind: FileKind;
  readonly file: File;
  readonly onDone: () => void;
}

function GivenFile({ kind, file, onDone }: GivenProps) {
  const t = useText();
  const [columns, setColumns] = useState<Asked['columns']>([]);
  const [ignoreUnknown, setIgnoreUnknown] = useState(false);
  const { name, size, lastModified: changedAt } = file;
  const asked: Asked = { kind, name, size, changedAt, columns, ignoreUnknown };
  const checked = useQuery({
    queryKey: ['import-check', asked],
    queryFn: () => checkImport(asked, file),
    placeholderData: (before) => before,
    retry: false,
    gcTime: 0,
  });
  if (checked.error) {
    return (
      <p className={css.wrong} role="alert">
        {problemWords(t, checked.error) ?? t.problems.crashHint}
      </p>
    );
  }
  if (!checked.data) return <p aria-live="polite">{t.files.bring.checking}</p>;
  return (
    <CheckedFile
      asked={asked}
      file={file}
      checked={checked.data}
      stale={checked.isPlaceholderData}
      onColumns={setColumns}
      onIgnoreUnknown={setIgnoreUnknown}
      onDone={onDone}
    />
  );
}
