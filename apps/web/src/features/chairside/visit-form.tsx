import { Button } from '@mantine/core';
import type { KeyboardEvent } from 'react';
import type { IsoTooth, ToothNotation } from '#lib/dentition';
import { newKey } from '../../api/idempotency.js';
import { useText } from '../../text/text-provider.js';
import { Caution } from '../../ui/caution.js';
import { PageHead } from '../../ui/page-head.js';
import { Section } from '../../ui/section.js';
import { useChairside } from './chairside-context.js';
import { withRestoration } from './draft/change-draft.js';
import { isBlank, newRestoration } from './draft/draft.js';
import { ofRestoration } from './draft/trouble.js';
import { MouthPanel } from './mouth/mouth-panel.js';
import type { Waiting } from './offline/outbox.js';
import { WaitingList } from './offline/waiting-list.js';
import { BookingNote } from './parts/booking-note.js';
import { focusControl } from './parts/focus-control.js';
import { VisitFacts } from './parts/visit-facts.js';
import { VisitMore } from './parts/visit-more.js';
import { PostBar } from './post-bar.js';
import { RestorationCard } from './restoration/restoration-card.js';
import { UsagePanel } from './usage/usage-panel.js';
import css from './visit-form.module.css';

interface Props {
  readonly primary: boolean;
  readonly onPrimary: (primary: boolean) => void;
  readonly onNotation: (notation: ToothNotation) => void;
  readonly isPosting: boolean;
  readonly problems: readonly string[];
  readonly onPost: () => void;
  readonly onClear: () => void;
  readonly onCorrect: (entry: Waiting) => void;
}

/** Left the mouth and what is done in it, right what it uses; below each other where it is narrow. */
export function VisitForm(props: Props) {
  const t = useText();
  const { draft, change, settle } = useChairside();
  const pick = (tooth: IsoTooth) => {
    settle('tooth');
    const there = draft.restorations.findLast((each) => each.tooth === tooth);
    const key = there?.key ?? newKey();
    const templateId = draft.bookedVisit?.templateId ?? '';
    const added = { ...newRestoration(key, tooth), templateId };
    if (!there) change((old) => withRestoration(old, added));
    focusControl(ofRestoration(key, 'surfaces'));
  };
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
    event.preventDefault();
    props.onPost();
  };
  return (
    // The keys of a shortcut, heard wherever the focus is; the button says them.
    <div className={css.screen} onKeyDownCapture={onKey}>
      <PageHead title={t.chairside.title} lead={t.chairside.lead}>
        {!isBlank(draft) && (
          <Button variant="default" onClick={props.onClear}>
            {t.chairside.bar.clear}
          </Button>
        )}
      </PageHead>
      <WaitingList onCorrect={props.onCorrect} />
      <div className={css.columns}>
        <div className={css.left}>
          <BookingNote />
          <VisitFacts />
          <VisitMore />
          <MouthPanel
            primary={props.primary}
            onPrimary={props.onPrimary}
            onNotation={props.onNotation}
            onPick={pick}
          />
          <Section title={t.chairside.restorations}>
            {draft.restorations.length === 0 && <p className={css.none}>{t.chairside.none}</p>}
            {draft.restorations.map((each) => (
              <RestorationCard key={each.key} of={each} />
            ))}
          </Section>
        </div>
        <div className={css.right}>
          <div className={css.usage}>
            <UsagePanel />
          </div>
          <PostBar isPosting={props.isPosting} problems={props.problems} onPost={props.onPost} />
        </div>
      </div>
      <Caution />
    </div>
  );
}
