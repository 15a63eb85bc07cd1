-- Months of contributions are folded in the background, a few at a time, as costs are: nobody who asks
-- for a report waits for it.

DROP FUNCTION fold_contributions();

-- Works changed months of a practice out again, the latest first; answers how many there were. A change
-- that commits meanwhile keeps its row, because only rows that were seen are deleted and each statement
-- that follows sees at least as much. Does nothing while somebody else is at it, or while the fee list
-- is being changed.
CREATE FUNCTION fold_contributions_of(of_practice uuid, most integer) RETURNS integer
LANGUAGE plpgsql AS $$
DECLARE
  changed date[];
BEGIN
  IF NOT pg_try_advisory_xact_lock(hashtextextended('fold contributions of ' || of_practice, 0)) THEN
    RETURN 0;
  END IF;
  changed := ARRAY(SELECT DISTINCT month FROM contribution_changes WHERE practice_id = of_practice
                   ORDER BY month DESC LIMIT most);
  DELETE FROM contribution_changes WHERE practice_id = of_practice AND month = ANY(changed);
  DELETE FROM contribution_months WHERE practice_id = of_practice AND month = ANY(changed);
  INSERT INTO contribution_months
  SELECT of_practice, c.* FROM unnest(changed) AS m(day)
  CROSS JOIN LATERAL contribution_cells(m.day, (m.day + interval '1 month - 1 day')::date) c;
  RETURN cardinality(changed);
END $$;

-- A step of work for every practice. The cells of a month are those of the running practice.
CREATE FUNCTION fold_contributions(most integer) RETURNS integer
LANGUAGE plpgsql SECURITY DEFINER SET search_path = public, pg_temp AS $$
DECLARE
  of_practice uuid;
  before text := current_setting('traybook.practice_id', true);
  folded integer := 0;
BEGIN
  FOR of_practice IN SELECT id FROM practices p
    WHERE EXISTS (SELECT FROM contribution_changes c WHERE c.practice_id = p.id) ORDER BY id
  LOOP
    PERFORM set_config('traybook.practice_id', of_practice::text, true);
    folded := folded + fold_contributions_of(of_practice, most);
  END LOOP;
  PERFORM set_config('traybook.practice_id', coalesce(before, ''), true);
  RETURN folded;
END $$;
