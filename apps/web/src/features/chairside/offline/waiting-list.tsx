import { Button } from '@mantine/core';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useSession } from '../../../app/session.js';
import { useFormat } from '../../../app/use-format.js';
import { useText } from '../../../text/text-provider.js';
import { Dialog } from '../../../ui/dialog.js';
import { Section } from '../../../ui/section.js';
import { StatusMark, type Tone } from '../../../ui/status-mark.js';
import { fieldSentence } from '../words.js';
import { remove, type Waiting } from './outbox.js';
import { sendNow } from './runner.js';
import { useOnline, useOutbox } from './use-outbox.js';
import css from './waiting-list.module.css';

interface Props {
  readonly onCorrect: (entry: Waiting) => void;
}

const TONES: Readonly<Record<Waiting['state'], Tone>> = {
  waiting: 'caution',
  refused: 'danger',
  booked: 'good',
};

/** Visits that are on this device and not, or only just, in the book. */
export function WaitingList({ onCorrect }: Props) {
  const t = useText();
  const online = useOnline();
  const { practice } = useSession();
  const entries = useOutbox().filter(({ practiceId }) => practiceId === practice.id);
  const words = t.chairside.offline;
  const waits = entries.some(({ state }) => state === 'waiting');
  return (
    <div aria-live="polite">
      {!online && <p className={css.banner}>{words.banner}</p>}
      {entries.length > 0 && (
        <Section
          title={words.title}
          aside={
            online && waits ? (
              <Button variant="subtle" onClick={sendNow}>
                {words.tryNow}
              </Button>
            ) : undefined
          }
        >
          <ul className={css.list}>
            {entries.map((entry) => (
              <Entry key={entry.id} entry={entry} onCorrect={() => onCorrect(entry)} />
            ))}
          </ul>
        </Section>
      )}
    </div>
  );
}

interface EntryProps {
  readonly entry: Waiting;
  readonly onCorrect: () => void;
}

function Entry({ entry, onCorrect }: EntryProps) {
  const t = useText();
  const format = useFormat();
  const { person } = useSession();
  const { body, state, problem } = entry;
  const words = t.chairside.offline;
  const isOwn = entry.personId === person.id;
  const says = state === 'waiting' && !isOwn ? words.waitsFor(entry.personName) : words[state];
  const teeth = body.restorations.map(({ tooth, surfaces }) => `${tooth} ${surfaces}`).join(', ');
  return (
    <li className={css.entry}>
      <div>
        <p className={css.chart}>{body.chartReference}</p>
        <p className={css.quiet}>
          {[format.day(body.visitedOn), teeth].join(' · ')}
          {entry.materialCost !== undefined && ` · ${format.money(entry.materialCost)}`}
        </p>
        {problem && (
          <p className={css.reason}>
            {(problem.errors ?? []).map(({ message }) => fieldSentence(t, message)).join(' ') ||
              problem.detail}
          </p>
        )}
      </div>
      <StatusMark tone={TONES[state]}>{says}</StatusMark>
      <div className={css.ways}>
        {state === 'refused' && isOwn && (
          <>
            <Button variant="default" onClick={onCorrect}>
              {words.correct}
            </Button>
            <Discard entry={entry} />
          </>
        )}
        {state === 'booked' && (
          <>
            <Link to="/visits/$visitId" params={{ visitId: entry.id }} className={css.link}>
              {t.chairside.booked.open}
            </Link>
            <Button variant="subtle" onClick={() => remove(entry.id)}>
              {words.dismiss}
            </Button>
          </>
        )}
      </div>
    </li>
  );
}

function Discard({ entry }: { readonly entry: Waiting }) {
  const t = useText();
  const [asking, setAsking] = useState(false);
  const words = t.chairside.offline;
  return (
    <>
      <Button variant="subtle" onClick={() => setAsking(true)}>
        {words.discard}
      </Button>
      <Dialog title={words.discardTitle} opened={asking} onClose={() => setAsking(false)}>
        <p>{words.discardWhat(entry.body.chartReference)}</p>
        <div className={css.ways}>
          <Button onClick={() => remove(entry.id)}>{words.discard}</Button>
          <Button variant="default" onClick={() => setAsking(false)} data-autofocus>
            {words.keep}
          </Button>
        </div>
      </Dialog>
    </>
  );
}
