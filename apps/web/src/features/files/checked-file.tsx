import { Button } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useBooking } from '../../api/use-booking.js';
import { useText } from '../../text/text-provider.js';
import { notify } from '../../ui/notice-store.js';
import { useReport } from '../../ui/use-report.js';
import { type Asked, type Checked, importFile, importsQuery } from './api/imports.js';
import { CheckedSheetView } from './checked-sheet.js';
import css from './files.module.css';

interface Props {
  readonly asked: Asked;
  readonly file: File;
  readonly checked: Checked;
  readonly stale: boolean;
  readonly onColumns: (columns: Asked['columns']) => void;
  readonly onIgnoreUnknown: (ignore: boolean) => void;
  readonly onDone: () => void;
}

/** What the book says of any of these may be another after an import. */
const CHANGED = [
  ...['imports', 'suppliers', 'locations', 'consumables', 'presentations', 'procedure-templates'],
  ...['stock', 'deliveries', 'lots', 'booked-visits', 'alerts', 'shortfalls', 'audit-entries'],
  ...['reorder', 'categories'],
].map((noun) => [noun]);

/** What would become of a file, sheet by sheet, and the button that brings it in. */
export function CheckedFile(props: Props) {
  const { asked, checked, stale } = props;
  const w = useText().files;
  return (
    <>
      {checked.sheets.map((sheet) => (
        <CheckedSheetView
          key={sheet.sheet}
          sheet={sheet}
          asked={asked}
          stale={stale}
          onColumns={props.onColumns}
          onIgnoreUnknown={props.onIgnoreUnknown}
        />
      ))}
      {checked.sheetsLeftOut.length > 0 && (
        <p className={css.hint}>{w.sheet.leftOut(checked.sheetsLeftOut.join(', '))}</p>
      )}
      <Run {...props} />
    </>
  );
}

function Run({ asked, file, checked, stale, onDone }: Props) {
  const w = useText().files.run;
  const report = useReport();
  const [id, setId] = useState<string | undefined>(undefined);
  const { book, isBooking } = useBooking({
    send: (body: Asked, key) => {
      setId(key);
      return importFile(body, file, key);
    },
    changes: CHANGED,
  });
  const rows = checked.sheets.reduce((sum, sheet) => sum + sheet.newRows + sheet.changedRows, 0);
  if (!checked.ready) {
    // What a sheet as a whole lacks stands above it already.
    const rowsWrong = checked.sheets.some((sheet) => sheet.errorRows > 0);
    return rowsWrong ? <p className={css.wrong}>{w.blocked}</p> : null;
  }
  if (rows === 0) return <p className={css.hint}>{w.nothing}</p>;
  const run = () =>
    book(asked)
      .then((done) => {
        notify({ tone: 'done', text: w.done(done.newRows, done.changedRows, done.sameRows) });
        onDone();
      })
      .catch(report);
  return (
    <div className={css.run}>
      <Button loading={isBooking} disabled={stale} onClick={() => void run()}>
        {w.button(rows)}
      </Button>
      {isBooking && <Progress id={id} />}
    </div>
  );
}

function Progress({ id }: { readonly id: string | undefined }) {
  const w = useText().files.run;
  const { data } = useQuery({ ...importsQuery, refetchInterval: 500 });
  const run = data?.items.find((each) => each.id === id);
  const [done, total] = [run?.rowsDone ?? 0, run?.rowsTotal ?? 0];
  return (
    <div className={css.progress} role="status">
      <progress value={done} max={Math.max(1, total)} aria-label={w.going} />
      <span>{total > 0 ? w.progress(done, total) : w.going}</span>
    </div>
  );
}
