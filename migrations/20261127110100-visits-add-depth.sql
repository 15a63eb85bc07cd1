-- What is known of a visit beyond its templates: whether it went without anaesthetic, how long an
-- assistant was there, what the cavity was measured to be, and what is done again.

ALTER TABLE visits ADD COLUMN without_anaesthetic boolean NOT NULL DEFAULT false;

ALTER TABLE restorations
  ADD COLUMN assistant_minutes integer CHECK (assistant_minutes BETWEEN 0 AND 1440), -- NULL: not stated
  ADD COLUMN length_mm numeric(18,6) CHECK (length_mm > 0),
  ADD COLUMN width_mm numeric(18,6) CHECK (width_mm > 0),
  -- Where the volume comes from; NULL: recorded before that was kept.
  ADD COLUMN volume_source text CHECK (volume_source IN ('planning value', 'entered', 'dimensions')),
  ADD COLUMN redo_of uuid, -- an earlier restoration that this one does again
  ADD CHECK ((length_mm IS NULL) = (width_mm IS NULL)),
  ADD CHECK ((coalesce(volume_source, '') = 'dimensions') = (length_mm IS NOT NULL)),
  ADD CHECK (redo_of <> id),
  ADD FOREIGN KEY (practice_id, redo_of) REFERENCES restorations (practice_id, id);
CREATE INDEX restorations_redo ON restorations (redo_of) WHERE redo_of IS NOT NULL;

-- The lines of a visit that share single doses of their consumable: each is charged what it dispensed
-- and its part of what stayed in the doses.
ALTER TABLE usage_lines ADD COLUMN shares_dose boolean NOT NULL DEFAULT false;
