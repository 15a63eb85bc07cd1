-- Lists that came in from files: which, by whom, how far they got, and which rows of opening stock they
-- booked, so that the same file twice books nothing twice.

CREATE TABLE file_imports (
  id uuid PRIMARY KEY,
  practice_id uuid NOT NULL REFERENCES practices,
  kind text NOT NULL CHECK (length(kind) BETWEEN 1 AND 40),
  file_name text NOT NULL CHECK (length(btrim(file_name)) BETWEEN 1 AND 200),
  file_hash text NOT NULL CHECK (file_hash ~ '^[0-9a-f]{64}$'), -- SHA-256 of its bytes
  state text NOT NULL CHECK (state IN ('running', 'done', 'refused')),
  rows_total integer NOT NULL CHECK (rows_total >= 0),
  rows_done integer NOT NULL CHECK (rows_done BETWEEN 0 AND rows_total),
  rows_new integer NOT NULL DEFAULT 0,
  rows_changed integer NOT NULL DEFAULT 0,
  rows_same integer NOT NULL DEFAULT 0,
  reason text, -- why it was refused
  imported_by uuid NOT NULL,
  started_at timestamptz NOT NULL DEFAULT now(),
  touched_at timestamptz NOT NULL DEFAULT now(),
  UNIQUE (practice_id, id),
  CHECK (state <> 'done' OR rows_new + rows_changed + rows_same = rows_total),
  FOREIGN KEY (practice_id, imported_by) REFERENCES people (practice_id, id)
);
CREATE INDEX file_imports_latest ON file_imports (practice_id, started_at DESC, id DESC);

CREATE TABLE imported_rows (
  practice_id uuid NOT NULL REFERENCES practices,
  row_key text NOT NULL CHECK (row_key ~ '^[0-9a-f]{64}$'),      -- SHA-256 of what names the row
  content_hash text NOT NULL CHECK (content_hash ~ '^[0-9a-f]{64}$'), -- of all that it says
  layer_id uuid NOT NULL,
  imported_on date NOT NULL,
  PRIMARY KEY (practice_id, row_key),
  FOREIGN KEY (practice_id, layer_id) REFERENCES layers (practice_id, id)
);

DO $$
DECLARE t text;
BEGIN
  FOREACH t IN ARRAY ARRAY['file_imports', 'imported_rows'] LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', t);
    EXECUTE format('CREATE POLICY practice_only ON %I USING (practice_id = current_practice())', t);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO traybook_app', t);
  END LOOP;
END $$;
GRANT UPDATE (state, rows_total, rows_done, rows_new, rows_changed, rows_same, reason, touched_at)
  ON file_imports TO traybook_app;
-- A row whose delivery was reversed may come in once more.
GRANT UPDATE (content_hash, layer_id, imported_on) ON imported_rows TO traybook_app;
