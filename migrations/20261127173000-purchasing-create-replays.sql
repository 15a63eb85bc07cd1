-- The history of a practice replayed under the computed policy and under the rules it had. A replay runs
-- in the background; its result is written in one go, or not at all.

CREATE TABLE replays (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  first_day date NOT NULL,
  last_day date NOT NULL,
  state text NOT NULL CHECK (state IN ('running', 'done', 'failed')),
  steps_done integer NOT NULL CHECK (steps_done BETWEEN 0 AND steps_total),
  steps_total integer NOT NULL,      -- 0 until it is known
  seen_at timestamptz NOT NULL,      -- the last sign of life of the process that reckons
  started_by uuid NOT NULL,
  started_at timestamptz NOT NULL,
  finished_at timestamptz,
  failure text CHECK (failure IN ('stopped', 'error')), -- stopped: the service ended in between
  result jsonb,
  UNIQUE (practice_id, id),
  CHECK (last_day >= first_day),
  CHECK ((state = 'running') = (finished_at IS NULL)),
  CHECK ((state = 'failed') = (failure IS NOT NULL)),
  CHECK ((state = 'done') = (result IS NOT NULL)),
  FOREIGN KEY (practice_id, started_by) REFERENCES people (practice_id, id)
);
-- One at a time for a practice.
CREATE UNIQUE INDEX replays_running ON replays (practice_id) WHERE state = 'running';
CREATE INDEX replays_time ON replays (practice_id, started_at DESC, id DESC);

ALTER TABLE replays ENABLE ROW LEVEL SECURITY;
CREATE POLICY practice_only ON replays USING (practice_id = current_practice());
GRANT SELECT, INSERT ON replays TO traybook_app;
GRANT UPDATE (state, steps_done, steps_total, seen_at, finished_at, failure, result) ON replays
  TO traybook_app;
