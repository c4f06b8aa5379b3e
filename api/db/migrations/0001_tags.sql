ALTER TABLE `job_revisions` ADD `tag` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `jobs` ADD `tag` text DEFAULT '' NOT NULL;--> statement-breakpoint
ALTER TABLE `libraries` ADD `tag` text DEFAULT '' NOT NULL;--> statement-breakpoint
-- What was saved before tags were gets one by chance: SQLite has no hash, and a tag need only differ.
UPDATE `job_revisions` SET `tag` = lower(hex(randomblob(8)));--> statement-breakpoint
UPDATE `jobs` SET `tag` = coalesce((
	SELECT `job_revisions`.`tag` FROM `job_revisions`
	WHERE `job_revisions`.`firm_id` = `jobs`.`firm_id` AND `job_revisions`.`job_id` = `jobs`.`job_id` AND `job_revisions`.`revision` = `jobs`.`revision`
), '');--> statement-breakpoint
UPDATE `libraries` SET `tag` = lower(hex(randomblob(8)));
