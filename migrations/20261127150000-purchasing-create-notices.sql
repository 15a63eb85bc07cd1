-- Alerts are worked out from the data whenever somebody asks. What is kept is when each was opened and
-- closed, who put one off until when and why, and which messages about them went out.

CREATE TABLE alert_episodes (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  alert_id text NOT NULL CHECK (length(alert_id) BETWEEN 1 AND 200),
  kind text NOT NULL,
  sentence text NOT NULL,
  opened_at timestamptz NOT NULL,
  closed_at timestamptz,
  CHECK (closed_at IS NULL OR closed_at >= opened_at)
);
-- The same reason is open once at a time.
CREATE UNIQUE INDEX alert_episodes_open ON alert_episodes (practice_id, alert_id)
  WHERE closed_at IS NULL;
CREATE INDEX alert_episodes_time ON alert_episodes (practice_id, opened_at DESC, id DESC);

-- Append-only: who wants to be asked sooner writes another one with an earlier day.
CREATE TABLE alert_snoozes (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  alert_id text NOT NULL CHECK (length(alert_id) BETWEEN 1 AND 200),
  until date NOT NULL,
  reason text NOT NULL CHECK (length(btrim(reason)) BETWEEN 1 AND 500),
  person_id uuid NOT NULL,
  made_at timestamptz NOT NULL,
  place bigint GENERATED ALWAYS AS IDENTITY,
  FOREIGN KEY (practice_id, person_id) REFERENCES people (practice_id, id)
);
CREATE INDEX alert_snoozes_alert ON alert_snoozes (practice_id, alert_id, place DESC);

CREATE TABLE notice_settings (
  practice_id uuid PRIMARY KEY REFERENCES practices,
  digest_on boolean NOT NULL DEFAULT false,
  digest_to text[] NOT NULL DEFAULT '{}' CHECK (cardinality(digest_to) <= 20),
  digest_hour smallint NOT NULL DEFAULT 7 CHECK (digest_hour BETWEEN 0 AND 23),
  digest_language text NOT NULL DEFAULT 'en' CHECK (digest_language IN ('en', 'de')),
  webhook_on boolean NOT NULL DEFAULT false,
  webhook_url text CHECK (length(webhook_url) <= 2000),
  webhook_secret text NOT NULL,
  last_digest_on date,
  CHECK (NOT digest_on OR cardinality(digest_to) > 0),
  CHECK (NOT webhook_on OR webhook_url IS NOT NULL)
);

-- Messages on their way: written with what they are about, sent afterwards, tried again when that fails.
CREATE TABLE notices (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  channel text NOT NULL CHECK (channel IN ('digest', 'webhook')),
  made_at timestamptz NOT NULL,
  recipients text[] NOT NULL CHECK (cardinality(recipients) > 0),
  content json NOT NULL,
  state text NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'sent', 'given up')),
  attempts smallint NOT NULL DEFAULT 0,
  next_try_at timestamptz NOT NULL,
  sent_at timestamptz,
  last_error text,
  CHECK ((state = 'sent') = (sent_at IS NOT NULL))
);
CREATE INDEX notices_waiting ON notices (practice_id, next_try_at) WHERE state = 'waiting';
CREATE INDEX notices_time ON notices (practice_id, made_at DESC, id DESC);

-- Which alerts a message told about: nobody is told of the same opening twice on the same way.
CREATE TABLE noticed_episodes (
  practice_id uuid NOT NULL REFERENCES practices,
  channel text NOT NULL CHECK (channel IN ('digest', 'webhook')),
  episode_id uuid NOT NULL REFERENCES alert_episodes,
  notice_id uuid NOT NULL REFERENCES notices,
  PRIMARY KEY (channel, episode_id)
);

-- Whom the service has to look after without anybody asking. It answers with ids and settings only.
CREATE FUNCTION practices_to_watch()
RETURNS TABLE (practice_id uuid, practice_name text, time_zone text, currency text,
               expiry_warning_days integer)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT id, name, time_zone, currency, expiry_warning_days FROM practices ORDER BY id
$$;

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['alert_episodes', 'alert_snoozes', 'notice_settings', 'notices',
                           'noticed_episodes'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT UPDATE (closed_at) ON alert_episodes TO traybook_app;
GRANT UPDATE ON notice_settings TO traybook_app;
GRANT UPDATE (state, attempts, next_try_at, sent_at, last_error) ON notices TO traybook_app;
REVOKE ALL ON FUNCTION practices_to_watch() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION practices_to_watch() TO traybook_app;
