-- Opening day: an operator sets itself up, people come and go, equipment and history are vouched for, house rules.
-- Every change here adds: the program of before runs on this database as well (see docs/operate.md).

-- The first operator ------------------------------------------------------------------------------------------------------

-- A token printed on the server's console opens the set-up page once. Made by the owner's account, before there is an operator.
CREATE TABLE set_up_token (
  id uuid NOT NULL,
  token_sha256 text NOT NULL,
  made_at timestamptz(3) NOT NULL,
  expires_at timestamptz(3) NOT NULL,
  used_at timestamptz(3),
  made_operator_id uuid,
  CONSTRAINT set_up_token_pkey PRIMARY KEY (id),
  CONSTRAINT set_up_token_sha256_key UNIQUE (token_sha256),
  CONSTRAINT set_up_token_use_whole CHECK ((used_at IS NULL) = (made_operator_id IS NULL))
);
ALTER TABLE set_up_token ENABLE ROW LEVEL SECURITY;
ALTER TABLE set_up_token FORCE ROW LEVEL SECURITY;
CREATE POLICY owner ON set_up_token TO CURRENT_USER USING (true) WITH CHECK (true);
-- The web account sees the one whose token it was told, or none.
CREATE POLICY by_token ON set_up_token TO wheelchock_app
  USING (token_sha256 = nullif(current_setting('app.set_up_sha256', true), ''))
  WITH CHECK (token_sha256 = nullif(current_setting('app.set_up_sha256', true), ''));
GRANT SELECT ON set_up_token TO wheelchock_app;
GRANT UPDATE (used_at, made_operator_id) ON set_up_token TO wheelchock_app;

-- us-customary, metric. Null: nobody has chosen, shown as US customary.
ALTER TABLE operator ADD COLUMN units text;
ALTER TABLE operator ADD CONSTRAINT operator_units_known CHECK (units IN ('us-customary', 'metric'));
-- Everybody who signs must have a second factor.
ALTER TABLE operator ADD COLUMN signers_need_second_factor boolean NOT NULL DEFAULT false;
GRANT UPDATE (name, part141, units, signers_need_second_factor) ON operator TO wheelchock_app;

-- A step of setting up that only a person can call done ("no house rules wanted"). The rest is read from the facts.
CREATE TABLE set_up_step (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  step text NOT NULL,
  done boolean NOT NULL,
  words text NOT NULL,
  by_id uuid NOT NULL,
  "at" timestamptz(3) NOT NULL,
  CONSTRAINT set_up_step_pkey PRIMARY KEY (id),
  CONSTRAINT set_up_step_operator_key UNIQUE (operator_id, id)
);

-- People ------------------------------------------------------------------------------------------------------------------

-- Null: nobody has chosen a password yet; password_hash then fits none.
ALTER TABLE person ADD COLUMN password_set_at timestamptz(3);
UPDATE person SET password_set_at = created_at;
ALTER TABLE person ADD COLUMN units text;
ALTER TABLE person ADD CONSTRAINT person_units_known CHECK (units IN ('us-customary', 'metric'));
ALTER TABLE person ADD COLUMN language text;
-- What law lets be erased was: name, address and password are gone from this row.
ALTER TABLE person ADD COLUMN erased_at timestamptz(3);

-- What became of somebody here: joined, left, returned, roles, erased. Inserts only.
CREATE TABLE person_event (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  what text NOT NULL,
  -- Local date it counts from.
  on_date date NOT NULL,
  words text NOT NULL,
  by_id uuid NOT NULL,
  "at" timestamptz(3) NOT NULL,
  CONSTRAINT person_event_pkey PRIMARY KEY (id),
  CONSTRAINT person_event_operator_key UNIQUE (operator_id, id),
  CONSTRAINT person_event_what_known CHECK (what IN ('joined', 'left', 'returned', 'roles', 'erased'))
);
ALTER TABLE person_event ADD CONSTRAINT person_event_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- A link that lets somebody choose a password: an invitation or a reset. The token itself is kept only until it was mailed, sealed.
CREATE TABLE person_link (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  kind text NOT NULL,
  token_sha256 text NOT NULL,
  sealed_token text,
  -- mail, printed.
  handed_over text NOT NULL,
  made_by_id uuid,
  made_at timestamptz(3) NOT NULL,
  expires_at timestamptz(3) NOT NULL,
  used_at timestamptz(3),
  ended_at timestamptz(3),
  CONSTRAINT person_link_pkey PRIMARY KEY (id),
  CONSTRAINT person_link_operator_key UNIQUE (operator_id, id),
  CONSTRAINT person_link_sha256_key UNIQUE (token_sha256),
  CONSTRAINT person_link_kind_known CHECK (kind IN ('invitation', 'password-reset')),
  CONSTRAINT person_link_handed_over_known CHECK (handed_over IN ('mail', 'printed'))
);
ALTER TABLE person_link ADD CONSTRAINT person_link_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- A letter is about a notice or carries a link.
ALTER TABLE letter ALTER COLUMN notice_id DROP NOT NULL;
ALTER TABLE letter ADD COLUMN link_id uuid;
ALTER TABLE letter ADD CONSTRAINT letter_link_fkey FOREIGN KEY (operator_id, link_id) REFERENCES person_link (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE letter ADD CONSTRAINT letter_link_key UNIQUE (operator_id, link_id);
ALTER TABLE letter ADD CONSTRAINT letter_is_about_one CHECK (num_nonnulls(notice_id, link_id) = 1);

-- Certificates are entered anew when they are renewed; the newer entry names the older.
ALTER TABLE certificate ADD COLUMN entered_by_id uuid;
ALTER TABLE certificate ADD COLUMN entered_at timestamptz(3);
ALTER TABLE certificate ADD COLUMN supersedes_id uuid;
ALTER TABLE certificate ADD COLUMN revoked_why text;
ALTER TABLE certificate ADD COLUMN revoked_by_id uuid;
ALTER TABLE certificate ADD CONSTRAINT certificate_supersedes_key UNIQUE (operator_id, supersedes_id);
ALTER TABLE certificate ADD CONSTRAINT certificate_supersedes_fkey FOREIGN KEY (operator_id, supersedes_id) REFERENCES certificate (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
GRANT UPDATE (revoked_on, revoked_why, revoked_by_id) ON certificate TO wheelchock_app;

-- The naming of a pilot for preventive maintenance can be taken back (43.3(g) is the operator's choice). Inserts only.
CREATE TABLE preventive_withdrawal (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  authorization_id uuid NOT NULL,
  words text NOT NULL,
  by_id uuid NOT NULL,
  "at" timestamptz(3) NOT NULL,
  CONSTRAINT preventive_withdrawal_pkey PRIMARY KEY (id),
  CONSTRAINT preventive_withdrawal_operator_key UNIQUE (operator_id, id),
  CONSTRAINT preventive_withdrawal_once_key UNIQUE (operator_id, authorization_id)
);
ALTER TABLE preventive_withdrawal ADD CONSTRAINT preventive_withdrawal_authorization_fkey FOREIGN KEY (operator_id, authorization_id) REFERENCES preventive_authorization (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- A picture or scan that proves something: of a certificate, of a letter of authorization. Bytes lie in the photo store.
CREATE TABLE proof (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  certificate_id uuid,
  mel_id uuid,
  file_name text NOT NULL,
  mime text NOT NULL,
  bytes integer NOT NULL,
  sha256 text NOT NULL,
  stored_as text NOT NULL,
  added_by_id uuid NOT NULL,
  added_at timestamptz(3) NOT NULL,
  CONSTRAINT proof_pkey PRIMARY KEY (id),
  CONSTRAINT proof_operator_key UNIQUE (operator_id, id),
  CONSTRAINT proof_of_one CHECK (num_nonnulls(certificate_id, mel_id) = 1)
);
ALTER TABLE proof ADD CONSTRAINT proof_certificate_fkey FOREIGN KEY (operator_id, certificate_id) REFERENCES certificate (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE proof ADD CONSTRAINT proof_mel_fkey FOREIGN KEY (operator_id, mel_id) REFERENCES mel (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Signing in --------------------------------------------------------------------------------------------------------------

CREATE TABLE session (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  began_at timestamptz(3) NOT NULL,
  last_seen_at timestamptz(3) NOT NULL,
  expires_at timestamptz(3) NOT NULL,
  -- Kind of browser and machine, in our own few words; not the whole header.
  device text NOT NULL,
  -- none, totp, passkey, recovery.
  second_factor text NOT NULL,
  ended_at timestamptz(3),
  ended_by_id uuid,
  CONSTRAINT session_pkey PRIMARY KEY (id),
  CONSTRAINT session_operator_key UNIQUE (operator_id, id),
  CONSTRAINT session_second_factor_known CHECK (second_factor IN ('none', 'totp', 'passkey', 'recovery'))
);
ALTER TABLE session ADD CONSTRAINT session_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX session_person_idx ON session (operator_id, person_id, expires_at);

CREATE TABLE second_factor (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  -- totp (RFC 6238), passkey (WebAuthn).
  kind text NOT NULL,
  name text NOT NULL,
  -- totp: sealed with the server's own secret; last_step stops a code from being used twice.
  sealed_secret text,
  last_step integer,
  -- passkey.
  credential_id text,
  public_key text,
  sign_count bigint,
  transports text[] NOT NULL DEFAULT '{}',
  added_at timestamptz(3) NOT NULL,
  -- Null: begun, not yet proven by a first code; it then opens and asks nothing.
  confirmed_at timestamptz(3),
  last_used_at timestamptz(3),
  ended_at timestamptz(3),
  ended_by_id uuid,
  CONSTRAINT second_factor_pkey PRIMARY KEY (id),
  CONSTRAINT second_factor_operator_key UNIQUE (operator_id, id),
  CONSTRAINT second_factor_credential_key UNIQUE (credential_id),
  CONSTRAINT second_factor_kind_known CHECK (kind IN ('totp', 'passkey')),
  CONSTRAINT second_factor_whole CHECK (
    (kind = 'totp' AND sealed_secret IS NOT NULL AND credential_id IS NULL)
    OR (kind = 'passkey' AND sealed_secret IS NULL AND credential_id IS NOT NULL AND public_key IS NOT NULL))
);
ALTER TABLE second_factor ADD CONSTRAINT second_factor_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

CREATE TABLE recovery_code (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  code_sha256 text NOT NULL,
  made_at timestamptz(3) NOT NULL,
  used_at timestamptz(3),
  ended_at timestamptz(3),
  CONSTRAINT recovery_code_pkey PRIMARY KEY (id),
  CONSTRAINT recovery_code_operator_key UNIQUE (operator_id, id)
);
ALTER TABLE recovery_code ADD CONSTRAINT recovery_code_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What a browser is asked to prove once: between password and second factor, when a passkey is added, before a signature.
CREATE TABLE challenge (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  -- sign-in, passkey-add, signature.
  purpose text NOT NULL,
  challenge text NOT NULL,
  made_at timestamptz(3) NOT NULL,
  expires_at timestamptz(3) NOT NULL,
  used_at timestamptz(3),
  CONSTRAINT challenge_pkey PRIMARY KEY (id),
  CONSTRAINT challenge_operator_key UNIQUE (operator_id, id),
  CONSTRAINT challenge_purpose_known CHECK (purpose IN ('sign-in', 'passkey-add', 'signature'))
);
ALTER TABLE challenge ADD CONSTRAINT challenge_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- What somebody vouches for ---------------------------------------------------------------------------------------------------

-- A signed record that something here agrees with the aircraft's own documents, or was carried over from them. Inserts only.
CREATE TABLE vouching (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  -- equipment, aircraft-type, aircraft, mel, discrepancy, deferral, compliance, paper, directives.
  subject_kind text NOT NULL,
  subject_id uuid NOT NULL,
  aircraft_id uuid,
  -- The document it was held against, with its revision or date.
  source text NOT NULL,
  person_id uuid NOT NULL,
  person_name text NOT NULL,
  statement text NOT NULL,
  content jsonb NOT NULL,
  hash text NOT NULL,
  signed_at timestamptz(3) NOT NULL,
  signed_on date NOT NULL,
  CONSTRAINT vouching_pkey PRIMARY KEY (id),
  CONSTRAINT vouching_operator_key UNIQUE (operator_id, id),
  CONSTRAINT vouching_subject_known CHECK (subject_kind IN ('equipment', 'aircraft-type', 'aircraft', 'mel', 'discrepancy', 'deferral',
    'compliance', 'paper', 'directives'))
);
ALTER TABLE vouching ADD CONSTRAINT vouching_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
CREATE INDEX vouching_subject_idx ON vouching (operator_id, subject_kind, subject_id);

-- A file of equipment, of a minimum equipment list or of history that was taken in whole. Inserts only.
CREATE TABLE taken_in (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  -- equipment, mel, write-ups, last-done.
  what text NOT NULL,
  -- csv, json.
  format text NOT NULL,
  aircraft_id uuid,
  file_name text NOT NULL,
  sha256 text NOT NULL,
  rows integer NOT NULL,
  taken_by_id uuid NOT NULL,
  taken_at timestamptz(3) NOT NULL,
  CONSTRAINT taken_in_pkey PRIMARY KEY (id),
  CONSTRAINT taken_in_operator_key UNIQUE (operator_id, id),
  CONSTRAINT taken_in_what_known CHECK (what IN ('equipment', 'mel', 'write-ups', 'last-done')),
  CONSTRAINT taken_in_format_known CHECK (format IN ('csv', 'json'))
);
ALTER TABLE taken_in ADD CONSTRAINT taken_in_aircraft_fkey FOREIGN KEY (operator_id, aircraft_id) REFERENCES aircraft (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Types, aircraft, equipment ----------------------------------------------------------------------------------------------

ALTER TABLE aircraft_type ADD COLUMN added_by_id uuid;
ALTER TABLE aircraft_type ADD COLUMN added_at timestamptz(3);
GRANT UPDATE (name, category, rating, turbine, max_takeoff_weight_lb, mmel_published, certificated_on, certificated_under_part23, engines,
  cooling, altitude_engine, retractable_gear, fuel_tanks, seats, front_seats, uses_fuses, equipment_list_source) ON aircraft_type TO wheelchock_app;

ALTER TABLE aircraft ADD COLUMN added_by_id uuid;
ALTER TABLE aircraft ADD COLUMN added_at timestamptz(3);
ALTER TABLE aircraft ADD COLUMN retired_why text;

-- starting-set, typed, imported. Null: entered before the question, trusted as it was then.
ALTER TABLE equipment ADD COLUMN origin text;
ALTER TABLE equipment ADD CONSTRAINT equipment_origin_known CHECK (origin IN ('starting-set', 'typed', 'imported'));
-- By what authority it is required: type-design, equipment-list, koel, directive, 91.205, mel.
ALTER TABLE equipment ADD COLUMN authority text[] NOT NULL DEFAULT '{}';
-- The signed record that this line, as it stands, agrees with the aircraft's documents. Null: nobody has said so.
ALTER TABLE equipment ADD COLUMN vouching_id uuid;
ALTER TABLE equipment ADD COLUMN taken_in_id uuid;
ALTER TABLE equipment ADD COLUMN added_by_id uuid;
ALTER TABLE equipment ADD COLUMN added_at timestamptz(3);
-- No longer on the aircraft's list since this day.
ALTER TABLE equipment ADD COLUMN removed_on date;
ALTER TABLE equipment ADD COLUMN removed_why text;
ALTER TABLE equipment ADD CONSTRAINT equipment_vouching_fkey FOREIGN KEY (operator_id, vouching_id) REFERENCES vouching (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE equipment ADD CONSTRAINT equipment_taken_in_fkey FOREIGN KEY (operator_id, taken_in_id) REFERENCES taken_in (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
GRANT UPDATE (name, function, jasc, installed, vfr_day_type_design, required_day_vfr, required_night_vfr, required_day_ifr, required_night_ifr,
  authority, vouching_id, removed_on, removed_why, origin) ON equipment TO wheelchock_app;

-- A newer list takes the place of the older, which stays for the deferrals that stand on it.
ALTER TABLE mel ADD COLUMN revision text;
ALTER TABLE mel ADD COLUMN letter_issued_on date;
ALTER TABLE mel ADD COLUMN taken_in_id uuid;
ALTER TABLE mel ADD COLUMN vouching_id uuid;
ALTER TABLE mel ADD COLUMN added_by_id uuid;
ALTER TABLE mel ADD COLUMN added_at timestamptz(3);
ALTER TABLE mel ADD COLUMN ended_at timestamptz(3);
ALTER TABLE mel ADD COLUMN ended_by_id uuid;
ALTER TABLE mel ADD CONSTRAINT mel_taken_in_fkey FOREIGN KEY (operator_id, taken_in_id) REFERENCES taken_in (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE mel ADD CONSTRAINT mel_vouching_fkey FOREIGN KEY (operator_id, vouching_id) REFERENCES vouching (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
GRANT UPDATE (letter_aboard, letter_reference, letter_issued_on, ended_at, ended_by_id) ON mel TO wheelchock_app;

-- One list in force for an aircraft; those it took the place of stay.
DROP INDEX mel_one_per_aircraft_key;
CREATE UNIQUE INDEX mel_one_in_force_key ON mel (operator_id, aircraft_id) WHERE ended_at IS NULL;

-- Directives that do not apply any more, and limits replaced by newer documents, stay on record.
ALTER TABLE directive ADD COLUMN added_by_id uuid;
ALTER TABLE directive ADD COLUMN added_at timestamptz(3);
ALTER TABLE directive ADD COLUMN ended_on date;
ALTER TABLE directive ADD COLUMN ended_why text;
ALTER TABLE directive ADD COLUMN ended_by_id uuid;
GRANT UPDATE (ended_on, ended_why, ended_by_id) ON directive TO wheelchock_app;
ALTER TABLE stored_limit ADD COLUMN added_by_id uuid;
ALTER TABLE stored_limit ADD COLUMN added_at timestamptz(3);
ALTER TABLE stored_limit ADD COLUMN ended_at timestamptz(3);
ALTER TABLE stored_limit ADD COLUMN ended_by_id uuid;
GRANT UPDATE (ended_at, ended_by_id) ON stored_limit TO wheelchock_app;

-- History that was there before: who vouched for it -------------------------------------------------------------------------

ALTER TABLE discrepancy ADD COLUMN vouching_id uuid;
ALTER TABLE discrepancy ADD COLUMN taken_in_id uuid;
ALTER TABLE determination ADD COLUMN vouching_id uuid;
ALTER TABLE deferral ADD COLUMN vouching_id uuid;
ALTER TABLE compliance ADD COLUMN vouching_id uuid;
ALTER TABLE compliance ADD COLUMN taken_in_id uuid;
ALTER TABLE paper ADD COLUMN vouching_id uuid;
ALTER TABLE discrepancy ADD CONSTRAINT discrepancy_vouching_fkey FOREIGN KEY (operator_id, vouching_id) REFERENCES vouching (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE discrepancy ADD CONSTRAINT discrepancy_taken_in_fkey FOREIGN KEY (operator_id, taken_in_id) REFERENCES taken_in (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE determination ADD CONSTRAINT determination_vouching_fkey FOREIGN KEY (operator_id, vouching_id) REFERENCES vouching (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE deferral ADD CONSTRAINT deferral_vouching_fkey FOREIGN KEY (operator_id, vouching_id) REFERENCES vouching (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE compliance ADD CONSTRAINT compliance_vouching_fkey FOREIGN KEY (operator_id, vouching_id) REFERENCES vouching (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE compliance ADD CONSTRAINT compliance_taken_in_fkey FOREIGN KEY (operator_id, taken_in_id) REFERENCES taken_in (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;
ALTER TABLE paper ADD CONSTRAINT paper_vouching_fkey FOREIGN KEY (operator_id, vouching_id) REFERENCES vouching (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- House rules ---------------------------------------------------------------------------------------------------------------

-- One version of one rule of the house (lib/rules/house). Inserts only; the newest version of a rule counts.
CREATE TABLE house_rule (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  rule_id uuid NOT NULL,
  version integer NOT NULL,
  kind text NOT NULL,
  settings jsonb NOT NULL,
  -- False: the rule was ended with this version.
  holds boolean NOT NULL,
  why text NOT NULL,
  made_by_id uuid NOT NULL,
  made_by_name text NOT NULL,
  made_at timestamptz(3) NOT NULL,
  CONSTRAINT house_rule_pkey PRIMARY KEY (id),
  CONSTRAINT house_rule_operator_key UNIQUE (operator_id, id),
  CONSTRAINT house_rule_version_key UNIQUE (operator_id, rule_id, version)
);

-- Personal data -------------------------------------------------------------------------------------------------------------

-- What was erased of a person, and what was kept because law asks for it. Inserts only.
CREATE TABLE personal_erasure (
  id uuid NOT NULL,
  operator_id uuid NOT NULL,
  person_id uuid NOT NULL,
  asked_on date NOT NULL,
  words text NOT NULL,
  -- [{ table, rows, why }] with the paragraph that keeps it.
  kept jsonb NOT NULL,
  erased jsonb NOT NULL,
  by_id uuid NOT NULL,
  "at" timestamptz(3) NOT NULL,
  CONSTRAINT personal_erasure_pkey PRIMARY KEY (id),
  CONSTRAINT personal_erasure_operator_key UNIQUE (operator_id, id)
);
ALTER TABLE personal_erasure ADD CONSTRAINT personal_erasure_person_fkey FOREIGN KEY (operator_id, person_id) REFERENCES person (operator_id, id) ON DELETE RESTRICT ON UPDATE RESTRICT;

-- Append-only, tenancy and grants as in the migrations before ------------------------------------------------------------------

DO $$
DECLARE
  signed text;
BEGIN
  FOREACH signed IN ARRAY ARRAY['set_up_step', 'person_event', 'preventive_withdrawal', 'proof', 'vouching', 'taken_in', 'house_rule',
    'personal_erasure']
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
  FOREACH owned IN ARRAY ARRAY['set_up_step', 'person_event', 'person_link', 'preventive_withdrawal', 'proof', 'session', 'second_factor',
    'recovery_code', 'challenge', 'vouching', 'taken_in', 'house_rule', 'personal_erasure']
  LOOP
    EXECUTE format('ALTER TABLE %I ENABLE ROW LEVEL SECURITY', owned);
    EXECUTE format('ALTER TABLE %I FORCE ROW LEVEL SECURITY', owned);
    EXECUTE format('CREATE POLICY tenant ON %I TO wheelchock_app USING (operator_id = (SELECT current_operator()))
      WITH CHECK (operator_id = (SELECT current_operator()))', owned);
    EXECUTE format('CREATE POLICY owner ON %I TO CURRENT_USER USING (true) WITH CHECK (true)', owned);
    EXECUTE format('GRANT SELECT, INSERT ON %I TO wheelchock_app', owned);
  END LOOP;
END $$;
-- Whose link is this? Asked before an operator is known; shows that one row or none.
CREATE POLICY by_link ON person_link FOR SELECT TO wheelchock_app
  USING (token_sha256 = nullif(current_setting('app.link_sha256', true), ''));
GRANT UPDATE (sealed_token, used_at, ended_at) ON person_link TO wheelchock_app;
GRANT UPDATE (last_seen_at, ended_at, ended_by_id) ON session TO wheelchock_app;
GRANT UPDATE (name, last_step, sign_count, confirmed_at, last_used_at, ended_at, ended_by_id) ON second_factor TO wheelchock_app;
GRANT UPDATE (used_at, ended_at) ON recovery_code TO wheelchock_app;
GRANT UPDATE (used_at) ON challenge TO wheelchock_app;
-- What is left of a letter after its time: that it was sent, not to whom or what it said. Emptied, never written anew.
GRANT UPDATE (to_address, body) ON letter TO wheelchock_app;
CREATE FUNCTION only_empty_letter() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF (NEW.to_address <> OLD.to_address AND NEW.to_address <> '') OR (NEW.body <> OLD.body AND NEW.body <> '') THEN
    RAISE EXCEPTION 'what letter % says is never changed, only emptied', OLD.id USING ERRCODE = 'restrict_violation';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER letter_only_emptied BEFORE UPDATE OF to_address, body ON letter
  FOR EACH ROW EXECUTE FUNCTION only_empty_letter();
-- Signing in leaves traces that have a time (docs/personal-data.md); they are swept.
GRANT DELETE ON session, challenge, recovery_code TO wheelchock_app;
-- Erasing: keys of second factors go, and the certificate number of somebody who signed nothing under it.
GRANT DELETE ON second_factor TO wheelchock_app;
GRANT UPDATE (number) ON certificate TO wheelchock_app;

-- The sweep of traces has to know operators before one is known, as letters do. Ids only.
CREATE FUNCTION operators_to_sweep() RETURNS SETOF uuid
  LANGUAGE sql STABLE SECURITY DEFINER SET search_path = public, pg_temp AS
  $$ SELECT id FROM operator $$;
REVOKE ALL ON FUNCTION operators_to_sweep() FROM PUBLIC;
GRANT EXECUTE ON FUNCTION operators_to_sweep() TO wheelchock_app;
