insert into firms (firm_id, demos_offered) values ('own', 1);
insert into jobs (firm_id, job_id, revision, saved_at, removed_at, reference, title, customer, wanted_points, schemes) values
  ('own', 'on', 2, '2026-01-02T00:00:00.000Z', null, 'R-1', 'On the list', 'A. Customer', 3, 2),
  ('own', 'off', 1, '2026-01-01T00:00:00.000Z', '2026-01-03T00:00:00.000Z', 'R-2', 'Off the list', 'B. Customer', 1, 0);
insert into job_revisions (firm_id, job_id, revision, text, saved_at, how, chain_began, handed_out, kept_for, bytes) values
  ('own', 'on', 1, '{"job":"first"}', '2026-01-01T00:00:00.000Z', 'by-hand', '2026-01-01T00:00:00.000Z', 1, 'named', 15),
  ('own', 'on', 2, '{"job":"second é"}', '2026-01-02T00:00:00.000Z', 'autosave', '2026-01-02T00:00:00.000Z', 0, null, 19),
  ('own', 'off', 1, '{"job":"off"}', '2026-01-01T00:00:00.000Z', 'by-hand', '2026-01-01T00:00:00.000Z', 0, null, 13);
insert into libraries (firm_id, revision, text, saved_at) values
  ('own', 1, '{"prices":"old"}', '2026-01-01T00:00:00.000Z'),
  ('own', 2, '{"prices":"new"}', '2026-01-02T00:00:00.000Z');
