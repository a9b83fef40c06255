-- The desk: what becomes of a release, plans that come from elsewhere, keys for other programs, deliveries to them, bases.

-- Bases can be added and put right -----------------------------------------------------------------------------------------

-- Where position and zone come from: 'typed', or the airport of the shipped file they were taken from.
ALTER TABLE base ADD COLUMN source text;
ALTER TABLE base ADD COLUMN added_by_id uuid;
ALTER TABLE base ADD COLUMN added_at timestamptz(3);
ALTER TABLE base ADD CONSTRAINT base_ident_key UNIQUE (operator_id, ident);

-- Plans, typed or taken from a file ------------------------------------------------------------------------------------------

CREATE TABLE plan_import (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  kind text NOT NULL,
  file_name text NOT NULL,
  -- SHA-256 of the file as it came.
  sha256 text NOT NULL,
  -- What it did: flights added, kept as they were, and cancelled.
  added integer NOT NULL,
  unchanged integer NOT NULL,
  cancelled integer NOT NULL,
  imported_by_id uuid NOT NULL,
  imported_at timestamptz(3) NOT NULL,
  CONSTRAINT plan_import_pkey PRIMARY KEY (id),
  CONSTRAINT plan_import_operator_key UNIQUE (operator_id, id),
  CONSTRAINT plan_import_kind_known CHECK (kind IN ('csv', 'icalendar'))
);

-- Places as idents: a base of the operator, or an airport of the shipped file. Null: from the aircraft's base and back.
ALTER TABLE planned_flight ADD COLUMN from_ident text;
ALTER TABLE planned_flight ADD COLUMN to_ident text;
ALTER TABLE planned_flight ADD COLUMN rules text;
ALTER TABLE planned_flight ADD COLUMN purpose text;
ALTER TABLE planned_flight ADD COLUMN import_id uuid;
-- The number the flight has where it came from, so that the same file twice plans it once.
ALTER TABLE planned_flight ADD COLUMN outside_uid text;
ALTER TABLE planned_flight ADD CONSTRAINT planned_flight_rules_known CHECK (rules IN ('VFR', 'IFR'));
ALTER TABLE planned_flight ADD CONSTRAINT planned_flight_import_fkey FOREIGN KEY (operator_id, import_id) REFERENCES plan_import (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE UNIQUE INDEX planned_flight_outside_key ON planned_flight (operator_id, outside_uid)
  WHERE outside_uid IS NOT NULL AND cancelled_at IS NULL;

-- What a release stood on beside the facts, and what became of it --------------------------------------------------------------

ALTER TABLE release ADD COLUMN planned_flight_id uuid;
-- Hours other flights will have spent by then: { recordedTenths, flights: [{ id, label, tenths }] }. Null: not counted then.
ALTER TABLE release ADD COLUMN spent_ahead jsonb;
-- A release that went void or was withdrawn before anybody set out spends no permit. That is in other tables, so no index can say
-- it: lib/releases/release-flight.ts does, behind the operator's write lock, which lets no two releases pass each other.
ALTER TABLE release DROP CONSTRAINT release_permit_key;
ALTER TABLE release ADD CONSTRAINT release_plan_fkey FOREIGN KEY (operator_id, planned_flight_id) REFERENCES planned_flight (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- The pilot in command has read the answer and takes the aircraft (91.7(b), 91.103): signed, and again after a warning.
CREATE TABLE flight_acceptance (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  release_id uuid NOT NULL,
  person_id uuid NOT NULL,
  person_name text NOT NULL,
  certificate_kind text NOT NULL,
  certificate_number text NOT NULL,
  statement text NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  signed_on date NOT NULL,
  CONSTRAINT flight_acceptance_pkey PRIMARY KEY (id),
  CONSTRAINT flight_acceptance_operator_key UNIQUE (operator_id, id)
);
ALTER TABLE flight_acceptance ADD CONSTRAINT flight_acceptance_release_fkey FOREIGN KEY (operator_id, release_id) REFERENCES release (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What happened to a released flight, one row a happening; its state is read from them (lib/rules/release-state.ts).
CREATE TABLE flight_event (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  release_id uuid NOT NULL,
  -- airborne, landed, closed (not flown, or closed without meters), void, warned, withdrawn.
  what text NOT NULL,
  -- When it happened, as told by whoever recorded it; of void and warned, when the facts changed here.
  "at" timestamptz(3) NOT NULL,
  words text NOT NULL,
  -- The write-up behind void or warned, where it was one.
  discrepancy_id uuid,
  -- Void and warned: the lines that now bar or limit. Null otherwise.
  lines jsonb,
  -- Void and warned: by whose act the facts changed.
  recorded_by_id uuid NOT NULL,
  recorded_at timestamptz(3) NOT NULL,
  CONSTRAINT flight_event_pkey PRIMARY KEY (id),
  CONSTRAINT flight_event_operator_key UNIQUE (operator_id, id),
  CONSTRAINT flight_event_what_known CHECK (what IN ('airborne', 'landed', 'closed', 'void', 'warned', 'withdrawn'))
);
ALTER TABLE flight_event ADD CONSTRAINT flight_event_release_fkey FOREIGN KEY (operator_id, release_id) REFERENCES release (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE flight_event ADD CONSTRAINT flight_event_discrepancy_fkey FOREIGN KEY (operator_id, discrepancy_id) REFERENCES discrepancy (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE UNIQUE INDEX flight_event_once_key ON flight_event (operator_id, release_id, what) WHERE what <> 'warned';

-- A notice tells of a write-up, of a release, or of both.
ALTER TABLE notice ALTER COLUMN discrepancy_id DROP NOT NULL;
ALTER TABLE notice ADD COLUMN release_id uuid;
ALTER TABLE notice ADD CONSTRAINT notice_release_fkey FOREIGN KEY (operator_id, release_id) REFERENCES release (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE notice ADD CONSTRAINT notice_is_about_something CHECK (num_nonnulls(discrepancy_id, release_id) >= 1);
ALTER TABLE notice DROP CONSTRAINT notice_what_known;
ALTER TABLE notice ADD CONSTRAINT notice_what_known CHECK (what IN ('judged', 'within-limits', 'deferred', 'repaired', 'serviced',
  'made-safe', 'released', 'release-void', 'release-warned', 'release-withdrawn'));

-- Keys for other programs, and deliveries to them ----------------------------------------------------------------------------------

CREATE TABLE access_key (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  name text NOT NULL,
  scopes text[] NOT NULL,
  -- First characters, to tell one from another; the key itself is shown once and kept nowhere.
  prefix text NOT NULL,
  key_sha256 text NOT NULL,
  -- It acts for this person and never may more than they; it stops when they leave.
  person_id uuid NOT NULL,
  issued_at timestamptz(3) NOT NULL,
  expires_at timestamptz(3),
  ended_at timestamptz(3),
  ended_by_id uuid,
  last_used_at timestamptz(3),
  CONSTRAINT access_key_pkey PRIMARY KEY (id),
  CONSTRAINT access_key_operator_key UNIQUE (operator_id, id),
  CONSTRAINT access_key_sha256_key UNIQUE (key_sha256),
  CONSTRAINT access_key_end_whole CHECK ((ended_at IS NULL) = (ended_by_id IS NULL))
);
ALTER TABLE access_key ADD CONSTRAINT access_key_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TABLE webhook (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  name text NOT NULL,
  url text NOT NULL,
  events text[] NOT NULL,
  -- Sealed with the server's own secret: it signs what is sent.
  sealed_secret text NOT NULL,
  added_by_id uuid NOT NULL,
  added_at timestamptz(3) NOT NULL,
  ended_at timestamptz(3),
  ended_by_id uuid,
  CONSTRAINT webhook_pkey PRIMARY KEY (id),
  CONSTRAINT webhook_operator_key UNIQUE (operator_id, id),
  CONSTRAINT webhook_end_whole CHECK ((ended_at IS NULL) = (ended_by_id IS NULL))
);

CREATE TABLE webhook_delivery (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  webhook_id uuid NOT NULL,
  event text NOT NULL,
  -- Row of the audit chain it tells of.
  audit_seq integer NOT NULL,
  body jsonb NOT NULL,
  -- waiting, sent, given-up.
  state text NOT NULL,
  tries integer NOT NULL DEFAULT 0,
  last_status integer,
  trouble text,
  made_at timestamptz(3) NOT NULL,
  sent_at timestamptz(3),
  CONSTRAINT webhook_delivery_pkey PRIMARY KEY (id),
  CONSTRAINT webhook_delivery_operator_key UNIQUE (operator_id, id),
  CONSTRAINT webhook_delivery_once_key UNIQUE (operator_id, webhook_id, audit_seq),
  CONSTRAINT webhook_delivery_state_known CHECK (state IN ('waiting', 'sent', 'given-up'))
);
ALTER TABLE webhook_delivery ADD CONSTRAINT webhook_delivery_webhook_fkey FOREIGN KEY (operator_id, webhook_id) REFERENCES webhook (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Every write leaves an audit row, so that row's commit is the word that something changed --------------------------------------------

CREATE FUNCTION tell_of_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  -- Only whose and which: whoever listens reads the rest as themselves, through row security.
  PERFORM pg_notify('wheelchock_change', json_build_object('operatorId', NEW.operator_id, 'seq', NEW.seq)::text);
  RETURN NULL;
END $$;
CREATE TRIGGER audit_row_tells AFTER INSERT ON audit_row FOR EACH ROW EXECUTE FUNCTION tell_of_change();

-- Append-only, tenancy and grants as in the migrations before ------------------------------------------------------------------------

DO $$
DECLARE
  signed text;
BEGIN
  FOREACH signed IN ARRAY ARRAY['flight_acceptance', 'flight_event', 'plan_import']
  LOOP
    EXECUTE format('CREATE TRIGGER %I BEFORE UPDATE OR DELETE ON %I FOR EACH ROW EXECUTE FUNCTION refuse_change()',
      signed || '_append_only', signed);
    EXECUTE format('CREATE TRIGGER %I BEFORE TRUNCATE ON %I FOR EACH STATEMENT EXECUTE FUNCTION refuse_change()',
      signed || '_no_truncate', signed);
  END LOOP;
END $$;

DO $$
DECLARE
  owned text;
BEGIN
  FOREACH owned IN ARRAY ARRAY['plan_import', 'flight_acceptance', 'flight_event', 'access_key', 'webhook', 'webhook_delivery']
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', owned);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', owned);
    EXECUTE format('CREATE POLICY tenant ON %I TO wheelchock_app USING (operator_id = (SELECT current_operator()))
      WITH CHECK (operator_id = (SELECT current_operator()))', owned);
    EXECUTE format('CREATE POLICY owner ON %I TO CURRENT_USER USING (true) WITH CHECK (true)', owned);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO wheelchock_app', owned);
  END LOOP;
END $$;
-- Whose key is this? Asked before an operator is known; shows that one row or none.
CREATE POLICY by_key ON access_key FOR SELECT TO wheelchock_app
  USING (key_sha256 = nullif(current_setting('app.key_sha256', true), ''));
GRANT UPDATE (ended_at, ended_by_id, last_used_at) ON access_key TO wheelchock_app;
GRANT UPDATE (ended_at, ended_by_id) ON webhook TO wheelchock_app;
GRANT UPDATE (state, tries, last_status, trouble, sent_at) ON webhook_delivery TO wheelchock_app;
GRANT INSERT ON base TO wheelchock_app;
GRANT UPDATE (name, latitude_deg, longitude_deg, zone, repair_available, transponder_airspace, adsb_airspace, controlled_airspace,
  source) ON base TO wheelchock_app;
