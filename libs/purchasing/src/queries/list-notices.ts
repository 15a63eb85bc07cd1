import { Injectable } from '@nestjs/common';
import { type Actor, decodeCursor, pageLimit, toPage, UnitOfWork } from '#lib/platform';
import type { NoticePageDto, NoticeQueryDto } from '../http/notices.dto.js';

const NOTICES = `
SELECT n.id, n.channel, n.made_at, n.recipients, n.state, n.attempts, n.sent_at, n.last_error,
       (SELECT count(*)::int FROM noticed_episodes e WHERE e.notice_id = n.id) AS alerts
FROM notices n
WHERE n.practice_id = $1
  AND ($2::timestamptz IS NULL OR (n.made_at, n.id) < ($2::timestamptz, $3::uuid))
ORDER BY n.made_at DESC, n.id DESC LIMIT $4`;

interface NoticeRow {
  readonly id: string;
  readonly channel: string;
  readonly made_at: Date;
  readonly recipients: string[];
  readonly state: string;
  readonly attempts: number;
  readonly sent_at: Date | null;
  readonly last_error: string | null;
  readonly alerts: number;
}

/** Messages about alerts, the latest first, with how it went. */
@Injectable()
export class ListNotices {
  constructor(private readonly uow: UnitOfWork) {}

  async run(actor: Actor, query: NoticeQueryDto): Promise<NoticePageDto> {
    const limit = pageLimit(query);
    const after = query.cursor === undefined ? [null, null] : decodeCursor(query.cursor, 2);
    const rows = await this.uow.read(actor.practiceId, (tx) =>
      tx.query<NoticeRow>(NOTICES, [actor.practiceId, ...after, limit + 1]),
    );
    const page = toPage(rows, limit, toNotice, (row) => [row.made_at.toISOString(), row.id]);
    return { items: [...page.items], nextCursor: page.nextCursor };
  }
}

function toNotice(row: NoticeRow) {
  return {
    ...{ id: row.id, channel: row.channel, madeAt: row.made_at.toISOString() },
    ...{ recipients: row.recipients, alerts: row.alerts, state: row.state },
    ...{ attempts: row.attempts, sentAt: row.sent_at?.toISOString() ?? null },
    lastError: row.last_error,
  };
}
