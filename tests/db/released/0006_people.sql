insert into accounts (firm_id, account_id, name, email, role, password_hash, since, closed_at) values
  ('own', 'a1', 'A. Owner', 'owner@own.example', 'owner', '$scrypt$ln=4,r=8,p=1$AAAAAAAAAAAAAAAAAAAAAA$AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA',
   '2026-01-12T00:00:00.000Z', null),
  ('own', 'a2', 'B. Gone', 'gone@own.example', 'read-only', '$scrypt$ln=4,r=8,p=1$AAAAAAAAAAAAAAAAAAAAAA$AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA',
   '2026-01-12T00:00:00.000Z', '2026-01-13T00:00:00.000Z');
insert into sessions (firm_id, token_hash, account_id, began_at, seen_at) values
  ('own', '4355a46b19d348dc2f57c046f8ef63d4538ebb936000f3c9ee954a27460dd865', 'a1', '2026-01-12T00:00:00.000Z', '2026-01-13T00:00:00.000Z');
insert into invitations (firm_id, invitation_id, token_hash, name, role, account_id, made_at, expires_at, used_at) values
  ('own', 'i1', '53c234e5e8472b6ac51c1ae1cab3fe06fad053beb8ebfd8977b010655bfdd3c3', 'A. Owner', 'owner', 'a1',
   '2026-01-12T00:00:00.000Z', '2026-01-19T00:00:00.000Z', '2026-01-12T01:00:00.000Z');
insert into attempts (counted, failures, last_at) values ('account owner@own.example', 2, '2026-01-12T00:00:00.000Z');
insert into quotation_links (firm_id, link_id, token_hash, job_id, quotation_id, made_at, expires_at, withdrawn_at) values
  ('own', 'l1', '1121cfccd5913f0a63fec40a6ffd44ea64f9dc135c66634ba001d10bcf4302a2', 'tagged', 'q1',
   '2026-01-12T00:00:00.000Z', '2026-02-12T00:00:00.000Z', '2026-01-14T00:00:00.000Z');
