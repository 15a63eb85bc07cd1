-- What a template line says of doses that several restorations share and of anaesthesia, and how long
-- an assistant is planned to be at the chair.

ALTER TABLE template_versions
  ADD COLUMN assistant_minutes integer NOT NULL DEFAULT 0
    CHECK (assistant_minutes BETWEEN 0 AND 1440);
-- Who wrote the versions so far planned one assistant for as long as the chair is taken.
UPDATE template_versions SET assistant_minutes = minutes;

-- shares_dose: one single dose may serve several restorations of a visit. What there is keeps what it
-- means: a dose for each of them. What is counted by the visit or a region is used once anyway.
-- anaesthetic: left out when the visit goes without anaesthetic.
ALTER TABLE template_lines
  ADD COLUMN shares_dose boolean NOT NULL DEFAULT false,
  ADD COLUMN anaesthetic boolean NOT NULL DEFAULT false,
  ADD CHECK (NOT shares_dose OR driver NOT IN ('visit', 'staff member', 'front segment or quadrant'));
-- Changes no visit: so far, none could go without.
UPDATE template_lines l SET anaesthetic = true
FROM consumables c
WHERE c.id = l.consumable_id AND c.category ~* '(ana?esth|anästh|needle|nadel|kanüle)';
