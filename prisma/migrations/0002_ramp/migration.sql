-- The ramp: walkaround lists by type, observations, photos outside the database, meters at departure and return, word to
-- the reporter.

-- Walkaround lists: one row a version, never changed; a walkaround names the version it was walked by --------------------

CREATE TABLE walkaround_plan (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  type_id uuid NOT NULL,
  version integer NOT NULL,
  content jsonb NOT NULL,
  why text NOT NULL,
  made_by_id uuid NOT NULL,
  made_at timestamptz(3) NOT NULL,
  CONSTRAINT walkaround_plan_pkey PRIMARY KEY (id),
  CONSTRAINT walkaround_plan_operator_key UNIQUE (operator_id, id),
  CONSTRAINT walkaround_plan_version_key UNIQUE (operator_id, type_id, version),
  CONSTRAINT walkaround_plan_version_counts CHECK (version >= 0)
);
ALTER TABLE walkaround_plan ADD CONSTRAINT walkaround_plan_type_fkey FOREIGN KEY (operator_id, type_id) REFERENCES aircraft_type (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE walkaround_plan ADD CONSTRAINT walkaround_plan_made_by_fkey FOREIGN KEY (operator_id, made_by_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

ALTER TABLE walkaround ADD COLUMN plan_id uuid;
ALTER TABLE walkaround ADD COLUMN answers jsonb;
ALTER TABLE walkaround ADD CONSTRAINT walkaround_plan_fkey FOREIGN KEY (operator_id, plan_id) REFERENCES walkaround_plan (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What was walked stays as it was walked.
CREATE FUNCTION freeze_finished_walkaround() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR OLD.finished_at IS NOT NULL OR NEW.plan_id IS DISTINCT FROM OLD.plan_id
    OR NEW.aircraft_id <> OLD.aircraft_id OR NEW.person_id <> OLD.person_id THEN
    RAISE EXCEPTION 'walkaround % is finished or its identity would change', OLD.id USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER walkaround_frozen BEFORE UPDATE OR DELETE ON walkaround
  FOR EACH ROW EXECUTE FUNCTION freeze_finished_walkaround();
CREATE TRIGGER walkaround_no_truncate BEFORE TRUNCATE ON walkaround
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

-- A finding may be about a write-up that was there before: then it is an observation and has no write-up of its own, or it
-- is the same thing worse or back again, and has one.
ALTER TABLE finding ADD COLUMN related_id uuid;
ALTER TABLE finding ADD COLUMN phase text;
ALTER TABLE finding ADD COLUMN item_key text;
ALTER TABLE finding ADD CONSTRAINT finding_related_fkey FOREIGN KEY (operator_id, related_id) REFERENCES discrepancy (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE finding ADD CONSTRAINT finding_phase_known CHECK (phase IN ('before-flight', 'in-flight', 'after-flight'));
CREATE INDEX finding_related_idx ON finding (operator_id, related_id) WHERE related_id IS NOT NULL;

-- Photos: new ones lie in a store outside the database, found by their key; older ones keep their bytes here.
ALTER TABLE photo ALTER COLUMN bytes DROP NOT NULL;
ALTER TABLE photo ADD COLUMN stored_as text;
ALTER TABLE photo ADD COLUMN small_sha256 text;
ALTER TABLE photo ADD COLUMN marks jsonb;
ALTER TABLE photo ADD CONSTRAINT photo_is_somewhere CHECK ((bytes IS NULL) = (stored_as IS NOT NULL));
ALTER TABLE photo ADD CONSTRAINT photo_small_with_store CHECK ((stored_as IS NULL) = (small_sha256 IS NULL));

-- Meters at departure and return belong to a release; one reading of each.
ALTER TABLE aircraft ADD COLUMN ttis_meter text;
ALTER TABLE aircraft ADD CONSTRAINT aircraft_ttis_meter_known CHECK (ttis_meter IN ('hobbs', 'tach'));
-- Unknown time in service stays unknown when the meters are read.
ALTER TABLE meter_reading ALTER COLUMN ttis_tenths DROP NOT NULL;
ALTER TABLE meter_reading ADD COLUMN release_id uuid;
ALTER TABLE meter_reading ADD COLUMN moment text;
ALTER TABLE meter_reading ADD CONSTRAINT meter_reading_release_fkey FOREIGN KEY (operator_id, release_id) REFERENCES release (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE meter_reading ADD CONSTRAINT meter_reading_moment_known
  CHECK (moment IN ('out', 'in') AND release_id IS NOT NULL OR moment IS NULL AND release_id IS NULL);
-- The figures entered with the aircraft, kept with the reading that nothing stands before: it overwrites them there.
ALTER TABLE meter_reading ADD COLUMN entered_hobbs_tenths integer;
ALTER TABLE meter_reading ADD COLUMN entered_tach_tenths integer;
ALTER TABLE meter_reading ADD COLUMN entered_ttis_tenths integer;
-- A mistyped reading stays as it is: another one supersedes it, once, and says why. Of each end of a flight one reading is
-- the first and all others supersede one of it, so exactly one of them stands.
ALTER TABLE meter_reading ADD COLUMN supersedes_id uuid;
ALTER TABLE meter_reading ADD COLUMN why text;
ALTER TABLE meter_reading ADD COLUMN corrected_at timestamptz(3);
ALTER TABLE meter_reading ADD CONSTRAINT meter_reading_supersedes_fkey FOREIGN KEY (operator_id, supersedes_id) REFERENCES meter_reading (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE meter_reading ADD CONSTRAINT meter_reading_supersedes_key UNIQUE (operator_id, supersedes_id);
ALTER TABLE meter_reading ADD CONSTRAINT meter_reading_correction_whole
  CHECK ((supersedes_id IS NULL) = (why IS NULL) AND (supersedes_id IS NULL) = (corrected_at IS NULL) AND why <> '');
CREATE UNIQUE INDEX meter_reading_moment_key ON meter_reading (operator_id, release_id, moment) WHERE supersedes_id IS NULL;
CREATE FUNCTION keep_correction_in_place() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NOT EXISTS (
    SELECT 1 FROM meter_reading WHERE operator_id = NEW.operator_id AND id = NEW.supersedes_id
      AND aircraft_id = NEW.aircraft_id AND release_id IS NOT DISTINCT FROM NEW.release_id
      AND moment IS NOT DISTINCT FROM NEW.moment) THEN
    RAISE EXCEPTION 'meter reading % would supersede one of something else', NEW.id USING ERRCODE = 'check_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER meter_reading_correction_in_place BEFORE INSERT ON meter_reading
  FOR EACH ROW WHEN (NEW.supersedes_id IS NOT NULL) EXECUTE FUNCTION keep_correction_in_place();

-- Word to whoever wrote something up, and the letters that carry it -------------------------------------------------------

CREATE TABLE notice (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  discrepancy_id uuid NOT NULL,
  what text NOT NULL,
  event_id uuid NOT NULL,
  by_name text NOT NULL,
  words text NOT NULL,
  "at" timestamptz(3) NOT NULL,
  read_at timestamptz(3),
  CONSTRAINT notice_pkey PRIMARY KEY (id),
  CONSTRAINT notice_operator_key UNIQUE (operator_id, id),
  CONSTRAINT notice_event_key UNIQUE (operator_id, person_id, event_id),
  CONSTRAINT notice_what_known CHECK (what IN ('judged', 'within-limits', 'deferred', 'repaired', 'serviced', 'made-safe'))
);
ALTER TABLE notice ADD CONSTRAINT notice_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE notice ADD CONSTRAINT notice_discrepancy_fkey FOREIGN KEY (operator_id, discrepancy_id) REFERENCES discrepancy (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX notice_person_idx ON notice (operator_id, person_id, "at");

-- A notice can be read once; nothing else about it changes.
CREATE FUNCTION keep_notice() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR OLD.read_at IS NOT NULL OR NEW.read_at IS NULL
    OR to_jsonb(NEW) - 'read_at' <> to_jsonb(OLD) - 'read_at' THEN
    RAISE EXCEPTION 'notice % stays as it was given', OLD.id USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER notice_kept BEFORE UPDATE OR DELETE ON notice FOR EACH ROW EXECUTE FUNCTION keep_notice();
CREATE TRIGGER notice_no_truncate BEFORE TRUNCATE ON notice FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

CREATE TABLE letter (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  notice_id uuid NOT NULL,
  to_address text NOT NULL,
  subject text NOT NULL,
  body text NOT NULL,
  state text NOT NULL,
  tries integer NOT NULL DEFAULT 0,
  next_try_at timestamptz(3) NOT NULL,
  sent_at timestamptz(3),
  trouble text,
  CONSTRAINT letter_pkey PRIMARY KEY (id),
  CONSTRAINT letter_operator_key UNIQUE (operator_id, id),
  CONSTRAINT letter_notice_key UNIQUE (operator_id, notice_id),
  CONSTRAINT letter_state_known CHECK (state IN ('waiting', 'sent', 'given-up')),
  CONSTRAINT letter_sent_whole CHECK ((state = 'sent') = (sent_at IS NOT NULL))
);
ALTER TABLE letter ADD CONSTRAINT letter_notice_fkey FOREIGN KEY (operator_id, notice_id) REFERENCES notice (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX letter_waiting_idx ON letter (next_try_at) WHERE state = 'waiting';

-- The one question about letters that is asked before an operator is known: whose are due? It tells numbers of operators
-- and nothing of what is in the letters.
CREATE FUNCTION operators_with_letters_due(as_of timestamptz) RETURNS SETOF uuid
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS
  $$ SELECT DISTINCT operator_id FROM letter WHERE state = 'waiting' AND next_try_at <= as_of $$;
REVOKE ALL ON FUNCTION operators_with_letters_due(timestamptz) FROM PUBLIC;
GRANT EXECUTE ON FUNCTION operators_with_letters_due(timestamptz) TO wheelchock_app;

-- Append-only, tenancy and grants as in the first migration ------------------------------------------------------------------

CREATE TRIGGER walkaround_plan_append_only BEFORE UPDATE OR DELETE ON walkaround_plan
  FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER walkaround_plan_no_truncate BEFORE TRUNCATE ON walkaround_plan
  FOR EACH STATEMENT EXECUTE FUNCTION refuse_change();

DO $$
DECLARE
  owned text;
BEGIN
  FOREACH owned IN ARRAY ARRAY['walkaround_plan', 'notice', 'letter']
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', owned);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', owned);
    EXECUTE format('CREATE POLICY tenant ON %I TO wheelchock_app USING (operator_id = (SELECT current_operator()))
      WITH CHECK (operator_id = (SELECT current_operator()))', owned);
    EXECUTE format('CREATE POLICY owner ON %I TO CURRENT_USER USING (true) WITH CHECK (true)', owned);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO wheelchock_app', owned);
  END LOOP;
END $$;
GRANT UPDATE (read_at) ON notice TO wheelchock_app;
GRANT UPDATE (state, tries, next_try_at, sent_at, trouble) ON letter TO wheelchock_app;
