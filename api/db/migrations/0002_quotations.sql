CREATE TABLE `assets` (
	`firm_id` text NOT NULL,
	`asset_id` text NOT NULL,
	`media_type` text NOT NULL,
	`bytes` integer NOT NULL,
	`content` blob NOT NULL,
	`kept_at` text NOT NULL,
	PRIMARY KEY(`firm_id`, `asset_id`),
	FOREIGN KEY (`firm_id`) REFERENCES `firms`(`firm_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `quotation_events` (
	`firm_id` text NOT NULL,
	`job_id` text NOT NULL,
	`quotation_id` text NOT NULL,
	`seq` integer NOT NULL,
	`at` text NOT NULL,
	`note` text NOT NULL,
	PRIMARY KEY(`firm_id`, `job_id`, `quotation_id`, `seq`),
	FOREIGN KEY (`firm_id`,`job_id`,`quotation_id`) REFERENCES `quotations`(`firm_id`,`job_id`,`quotation_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `quotations` (
	`firm_id` text NOT NULL,
	`job_id` text NOT NULL,
	`quotation_id` text NOT NULL,
	`revision` integer NOT NULL,
	`date` text NOT NULL,
	`issued_at` text NOT NULL,
	`heading` text NOT NULL,
	`valid_until` text,
	`offers` text NOT NULL,
	`document` text NOT NULL,
	`drawings` text NOT NULL,
	`engine` text NOT NULL,
	`edition` text NOT NULL,
	`job_revision` integer NOT NULL,
	`job_tag` text NOT NULL,
	`job_text` text NOT NULL,
	`library_revision` integer NOT NULL,
	`library_text` text NOT NULL,
	PRIMARY KEY(`firm_id`, `job_id`, `quotation_id`),
	FOREIGN KEY (`firm_id`,`job_id`) REFERENCES `jobs`(`firm_id`,`job_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `quotations_firm_id_job_id_revision_unique` ON `quotations` (`firm_id`,`job_id`,`revision`);--> statement-breakpoint
CREATE TABLE `variations` (
	`firm_id` text NOT NULL,
	`job_id` text NOT NULL,
	`quotation_id` text NOT NULL,
	`variation_id` text NOT NULL,
	`number` integer NOT NULL,
	`offered_at` text NOT NULL,
	`reason` text NOT NULL,
	`before_pence` integer NOT NULL,
	`after_pence` integer NOT NULL,
	`parts` text NOT NULL,
	`photos` text NOT NULL,
	`engine` text NOT NULL,
	`before_job_revision` integer NOT NULL,
	`job_revision` integer NOT NULL,
	`job_tag` text NOT NULL,
	`job_text` text NOT NULL,
	PRIMARY KEY(`firm_id`, `job_id`, `quotation_id`, `variation_id`),
	FOREIGN KEY (`firm_id`,`job_id`,`quotation_id`) REFERENCES `quotations`(`firm_id`,`job_id`,`quotation_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `variations_firm_id_job_id_quotation_id_number_unique` ON `variations` (`firm_id`,`job_id`,`quotation_id`,`number`);