import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useText } from '../../../text/text-provider.js';
import { Caution } from '../../../ui/caution.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { Section } from '../../../ui/section.js';
import { serviceQuery } from '../api/what-if.js';
import { ItemPicker } from '../item-picker.js';
import { BulkSection } from './bulk-section.js';
import { LevelPanels } from './level-panels.js';
import { LevelTable } from './level-table.js';
import { NowSentence } from './now-sentence.js';
import css from './what-if.module.css';

const route = getRouteApi('/in/ordering/what-if');

/** What another level of service would cost, and what a bulk offer really saves. */
export function WhatIfScreen() {
  const t = useText();
  const { item } = route.useSearch();
  const navigate = route.useNavigate();
  const curve = useQuery(serviceQuery(item));
  const words = t.foresight.whatIf;
  return (
    <>
      <PageHead title={words.title} lead={words.lead} />
      <Section title={words.service} hint={words.serviceHint}>
        <search className={`${css.picker ?? ''} tb-screen-only`}>
          <ItemPicker
            label={words.of}
            none={words.wholeShelf}
            value={item}
            onPick={(id) =>
              void navigate({ search: (old) => ({ ...old, item: id }), replace: true })
            }
          />
        </search>
        <Loaded query={curve}>
          {(data) =>
            data.points.length === 0 ? (
              <EmptyState title={words.empty} hint={words.emptyHint} />
            ) : (
              <>
                <NowSentence curve={data} />
                <LevelPanels curve={data} />
                <LevelTable curve={data} stale={curve.isPlaceholderData} />
              </>
            )
          }
        </Loaded>
      </Section>
      <BulkSection item={item} key={item ?? 'shelf'} />
      <Caution />
    </>
  );
}
