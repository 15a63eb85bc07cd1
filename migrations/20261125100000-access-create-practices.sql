-- Practices, people, sign-in and the role under which the service works.
-- The service's role owns nothing: it cannot switch row-level security off or alter a table.

DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'traybook_app') THEN
    CREATE ROLE traybook_app NOLOGIN;
  END IF;
EXCEPTION WHEN duplicate_object OR unique_violation THEN
  NULL; -- another database of this server is being migrated at the same moment
END $$;

DO $$
BEGIN
  IF NOT pg_has_role(current_user, 'traybook_app', 'SET') THEN
    EXECUTE format('GRANT traybook_app TO %I', current_user);
  END IF;
END $$;

GRANT USAGE ON SCHEMA public TO traybook_app;

-- The practice of the running transaction; NULL (and so no row at all) when none was set.
CREATE FUNCTION current_practice() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  RETURN nullif(current_setting('traybook.practice_id', true), '')::uuid;

CREATE TABLE practices (
  id uuid PRIMARY KEY,
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 200),
  time_zone text NOT NULL,
  currency char(3) NOT NULL CHECK (currency ~ '^[A-Z]{3}$'),
  tooth_notation text NOT NULL DEFAULT 'iso' CHECK (tooth_notation IN ('iso', 'universal')),
  cost_share_key text NOT NULL DEFAULT 'equal'
    CHECK (cost_share_key IN ('equal', 'minutes', 'surfaces')),
  expiry_warning_days integer NOT NULL DEFAULT 60 CHECK (expiry_warning_days BETWEEN 0 AND 3650),
  created_at timestamptz NOT NULL DEFAULT now()
);

CREATE TABLE people (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  display_name text NOT NULL CHECK (length(btrim(display_name)) BETWEEN 1 AND 120),
  sign_in_name text NOT NULL CHECK (sign_in_name = lower(sign_in_name)),
  password_hash text NOT NULL,
  role text NOT NULL CHECK (role IN ('assistant', 'manager', 'dentist', 'auditor', 'owner')),
  active boolean NOT NULL DEFAULT true,
  created_at timestamptz NOT NULL DEFAULT now(),
  UNIQUE (practice_id, id)
);
CREATE UNIQUE INDEX people_sign_in_name ON people (sign_in_name);

CREATE TABLE sessions (
  token_hash bytea PRIMARY KEY CHECK (length(token_hash) = 32),
  practice_id uuid NOT NULL REFERENCES practices,
  person_id uuid NOT NULL REFERENCES people,
  created_at timestamptz NOT NULL DEFAULT now(),
  expires_at timestamptz NOT NULL
);
CREATE INDEX sessions_person ON sessions (person_id);

CREATE TABLE api_tokens (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  person_id uuid NOT NULL REFERENCES people,
  name text NOT NULL CHECK (length(btrim(name)) BETWEEN 1 AND 120),
  token_hash bytea NOT NULL UNIQUE CHECK (length(token_hash) = 32),
  created_at timestamptz NOT NULL DEFAULT now(),
  expires_at timestamptz,
  revoked_at timestamptz
);

CREATE TABLE audit_entries (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  person_id uuid REFERENCES people,
  recorded_at timestamptz NOT NULL DEFAULT now(),
  action text NOT NULL,
  subject_kind text NOT NULL,
  subject_id text NOT NULL,
  details jsonb NOT NULL DEFAULT '{}'
);
CREATE INDEX audit_entries_time ON audit_entries (practice_id, recorded_at DESC, id DESC);

-- A link that lets whoever holds it create the first practice of an empty book. Not a practice's row.
CREATE TABLE first_start_links (
  token_hash bytea PRIMARY KEY CHECK (length(token_hash) = 32),
  created_at timestamptz NOT NULL DEFAULT now(),
  used_at timestamptz
);

CREATE TABLE idempotency_keys (
  practice_id uuid NOT NULL REFERENCES practices,
  key text NOT NULL CHECK (length(key) BETWEEN 1 AND 200),
  person_id uuid NOT NULL,
  request_hash text NOT NULL,
  status smallint,
  response json, -- json, not jsonb: a repeated request gets the very same text
  created_at timestamptz NOT NULL DEFAULT now(),
  PRIMARY KEY (practice_id, key)
);

-- Whom a session or a token belongs to has to be known before the practice is: these functions run
-- as the owner and answer for one secret only.
CREATE FUNCTION actor_by_session(hash bytea)
RETURNS TABLE (person_id uuid, practice_id uuid, role text, display_name text, sign_in_name text,
               practice_name text, time_zone text, currency text, tooth_notation text,
               cost_share_key text, expiry_warning_days integer)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT p.id, p.practice_id, p.role, p.display_name, p.sign_in_name, q.name, q.time_zone,
         q.currency, q.tooth_notation, q.cost_share_key, q.expiry_warning_days
  FROM sessions s JOIN people p ON p.id = s.person_id JOIN practices q ON q.id = p.practice_id
  WHERE s.token_hash = hash AND s.expires_at > now() AND p.active
$$;

CREATE FUNCTION actor_by_token(hash bytea)
RETURNS TABLE (person_id uuid, practice_id uuid, role text, display_name text, sign_in_name text,
               practice_name text, time_zone text, currency text, tooth_notation text,
               cost_share_key text, expiry_warning_days integer)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT p.id, p.practice_id, p.role, p.display_name, p.sign_in_name, q.name, q.time_zone,
         q.currency, q.tooth_notation, q.cost_share_key, q.expiry_warning_days
  FROM api_tokens t JOIN people p ON p.id = t.person_id JOIN practices q ON q.id = p.practice_id
  WHERE t.token_hash = hash AND t.revoked_at IS NULL AND (t.expires_at IS NULL OR t.expires_at > now())
    AND p.active
$$;

CREATE FUNCTION credentials_of(name text)
RETURNS TABLE (person_id uuid, practice_id uuid, password_hash text)
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS $$
  SELECT id, people.practice_id, people.password_hash FROM people
  WHERE sign_in_name = lower(name) AND active
$$;

CREATE FUNCTION book_is_empty() RETURNS boolean
LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp
AS $$ SELECT NOT EXISTS (SELECT FROM practices) $$;

-- Signing out needs only the secret itself.
CREATE FUNCTION end_session(hash bytea) RETURNS void
LANGUAGE sql SECURITY DEFINER SET search_path = public, pg_temp
AS $$ DELETE FROM sessions WHERE token_hash = hash OR expires_at < now() - interval '1 day' $$;

ALTER TABLE practices ENABLE ROW LEVEL SECURITY;
CREATE POLICY practice_only ON practices USING (id = current_practice());
DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['people', 'sessions', 'api_tokens', 'audit_entries', 'idempotency_keys'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
  END LOOP;
END $$;

REVOKE EXECUTE ON FUNCTION actor_by_session, actor_by_token, credentials_of, book_is_empty, end_session
  FROM PUBLIC;
GRANT EXECUTE ON FUNCTION actor_by_session, actor_by_token, credentials_of, book_is_empty, end_session
  TO traybook_app;
GRANT SELECT, INSERT ON practices TO traybook_app;
GRANT UPDATE (name, time_zone, tooth_notation, cost_share_key, expiry_warning_days) ON practices TO traybook_app;
GRANT SELECT, INSERT ON people TO traybook_app;
GRANT UPDATE (display_name, password_hash, role, active) ON people TO traybook_app;
GRANT SELECT, INSERT, DELETE ON sessions TO traybook_app;
GRANT SELECT, INSERT ON api_tokens TO traybook_app;
GRANT UPDATE (revoked_at) ON api_tokens TO traybook_app;
GRANT SELECT, INSERT ON audit_entries TO traybook_app;
GRANT SELECT, INSERT ON first_start_links TO traybook_app;
GRANT UPDATE (used_at) ON first_start_links TO traybook_app;
GRANT SELECT, INSERT ON idempotency_keys TO traybook_app;
GRANT UPDATE (status, response) ON idempotency_keys TO traybook_app;
