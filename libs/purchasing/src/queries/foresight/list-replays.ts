import { Injectable } from '@nestjs/common';
import { type Actor, refuse, type Tx, UnitOfWork } from '#lib/platform';
import { instantText } from '#lib/stock';
import { SILENT_SECONDS } from '../../db/foresight/replays.js';
import type {
  ReplayDto,
  ReplayListDto,
  ReplayResultDto,
  ReplaySummaryDto,
} from '../../http/foresight/replays.dto.js';

const SHOWN = 20;

// A replay that gave no sign of life for a while is shown as what it is going to be marked as.
const COLUMNS = `r.id, r.first_day::text AS first_day, r.last_day::text AS last_day, r.steps_done,
  r.steps_total, r.started_at, r.finished_at, r.failure, p.display_name AS person, r.state,
  r.state = 'running' AND r.seen_at < clock_timestamp() - make_interval(secs => $2) AS silent`;
const FROM = 'FROM replays r JOIN people p ON p.id = r.started_by WHERE r.practice_id = $1';

interface ReplayRow {
  readonly id: string;
  readonly first_day: string;
  readonly last_day: string;
  readonly steps_done: number;
  readonly steps_total: number;
  readonly started_at: Date;
  readonly finished_at: Date | null;
  readonly failure: string | null;
  readonly person: string;
  readonly state: string;
  readonly silent: boolean;
}

/** The replays of a practice, with how far they are and what came of them. */
@Injectable()
export class ListReplays {
  constructor(private readonly uow: UnitOfWork) {}

  async list(actor: Actor): Promise<ReplayListDto> {
    const sql = `SELECT ${COLUMNS} ${FROM} ORDER BY r.started_at DESC, r.id DESC LIMIT $3`;
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<ReplayRow>(sql, [tx.practiceId, SILENT_SECONDS, SHOWN]),
    );
    return { replays: rows.map(summaryOf) };
  }

  async get(actor: Actor, id: string): Promise<ReplayDto> {
    return this.uow.read(actor.practiceId, (tx) => oneReplay(tx, id));
  }
}

export async function oneReplay(tx: Tx, id: string): Promise<ReplayDto> {
  const [row] = await tx.query<ReplayRow & { readonly result: ReplayResultDto | null }>(
    `SELECT ${COLUMNS}, r.result ${FROM} AND r.id = $3`,
    [tx.practiceId, SILENT_SECONDS, id],
  );
  if (!row) throw refuse('not_found', 'There is no replay with this id.');
  return { ...summaryOf(row), result: row.result && completed(row.result) };
}

/** Results of a time when nobody counted what sending costs lack it. */
function completed(result: ReplayResultDto): ReplayResultDto {
  const { computed, old } = result;
  const none = { sent: null, freight: null };
  return { ...result, computed: { ...none, ...computed }, old: { ...none, ...old } };
}

function summaryOf(row: ReplayRow): ReplaySummaryDto {
  const { steps_done: done, steps_total: total, finished_at: finished } = row;
  const share = total === 0 ? 0 : done / total;
  return {
    ...{ id: row.id, firstDay: row.first_day, lastDay: row.last_day, startedBy: row.person },
    state: row.silent ? 'failed' : row.state,
    progress: (row.state === 'done' ? 1 : share).toFixed(3),
    startedAt: instantText(row.started_at),
    finishedAt: finished === null ? null : instantText(finished),
    failure: row.silent ? 'stopped' : row.failure,
  };
}
