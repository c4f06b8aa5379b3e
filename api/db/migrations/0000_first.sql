CREATE TABLE `firms` (
	`firm_id` text PRIMARY KEY NOT NULL,
	`demos_offered` integer DEFAULT false NOT NULL
);
--> statement-breakpoint
CREATE TABLE `job_revisions` (
	`firm_id` text NOT NULL,
	`job_id` text NOT NULL,
	`revision` integer NOT NULL,
	`text` text NOT NULL,
	`saved_at` text NOT NULL,
	`how` text NOT NULL,
	`chain_began` text NOT NULL,
	`handed_out` integer DEFAULT false NOT NULL,
	`kept_for` text,
	`bytes` integer NOT NULL,
	PRIMARY KEY(`firm_id`, `job_id`, `revision`),
	FOREIGN KEY (`firm_id`,`job_id`) REFERENCES `jobs`(`firm_id`,`job_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `jobs` (
	`firm_id` text NOT NULL,
	`job_id` text NOT NULL,
	`revision` integer NOT NULL,
	`saved_at` text NOT NULL,
	`removed_at` text,
	`reference` text NOT NULL,
	`title` text NOT NULL,
	`customer` text NOT NULL,
	`wanted_points` integer NOT NULL,
	`schemes` integer NOT NULL,
	PRIMARY KEY(`firm_id`, `job_id`),
	FOREIGN KEY (`firm_id`) REFERENCES `firms`(`firm_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `libraries` (
	`firm_id` text NOT NULL,
	`revision` integer NOT NULL,
	`text` text NOT NULL,
	`saved_at` text NOT NULL,
	PRIMARY KEY(`firm_id`, `revision`),
	FOREIGN KEY (`firm_id`) REFERENCES `firms`(`firm_id`) ON UPDATE no action ON DELETE no action
);
