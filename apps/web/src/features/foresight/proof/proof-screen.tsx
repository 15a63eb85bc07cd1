import { useQuery } from '@tanstack/react-query';
import { getRouteApi } from '@tanstack/react-router';
import { useMay } from '../../../app/session.js';
import { useText } from '../../../text/text-provider.js';
import { Caution } from '../../../ui/caution.js';
import { EmptyState } from '../../../ui/empty-state.js';
import { Loaded } from '../../../ui/loaded.js';
import { PageHead } from '../../../ui/page-head.js';
import { replayQuery, replaysQuery } from '../api/replays.js';
import { ReplayHistory } from './replay-history.js';
import { ReplayResultView } from './replay-result.js';
import { ReplayRunning } from './replay-running.js';
import { StartReplay } from './start-replay.js';

const route = getRouteApi('/in/ordering/proof');

/** What the computed ordering would have made of the practice's own history. */
export function ProofScreen() {
  const t = useText();
  const may = useMay();
  const list = useQuery(replaysQuery);
  const words = t.foresight.proof;
  return (
    <>
      <PageHead title={words.title} lead={words.lead} />
      <Loaded query={list}>
        {({ replays }) => {
          const running = replays.some((each) => each.state === 'running');
          return (
            <>
              {may('ordering.manage') && !running && <StartReplay />}
              {replays[0] === undefined ? (
                <EmptyState title={words.empty} hint={words.emptyHint} />
              ) : (
                <Chosen latest={replays[0].id} />
              )}
              <ReplayHistory replays={replays} />
            </>
          );
        }}
      </Loaded>
      <Caution />
    </>
  );
}

/** The replay of the address, or the latest one. */
function Chosen({ latest }: { readonly latest: string }) {
  const t = useText();
  const { replay: wanted } = route.useSearch();
  const query = useQuery(replayQuery(wanted ?? latest));
  const words = t.foresight.proof;
  return (
    <Loaded query={query}>
      {(replay) => {
        if (replay.result !== null)
          return <ReplayResultView replay={replay} result={replay.result} />;
        if (replay.state === 'running') return <ReplayRunning replay={replay} />;
        const hint = replay.failure === 'stopped' ? words.stopped : words.failed;
        return (
          <div role="alert">
            <EmptyState title={words.noResult} hint={hint} />
          </div>
        );
      }}
    </Loaded>
  );
}
