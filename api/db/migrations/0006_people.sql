CREATE TABLE `accounts` (
	`firm_id` text NOT NULL,
	`account_id` text NOT NULL,
	`name` text NOT NULL,
	`email` text NOT NULL,
	`role` text NOT NULL,
	`password_hash` text NOT NULL,
	`since` text NOT NULL,
	`closed_at` text,
	PRIMARY KEY(`firm_id`, `account_id`),
	FOREIGN KEY (`firm_id`) REFERENCES `firms`(`firm_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `accounts_open_email` ON `accounts` (`email`) WHERE closed_at is null;--> statement-breakpoint
CREATE TABLE `attempts` (
	`counted` text PRIMARY KEY NOT NULL,
	`failures` integer NOT NULL,
	`last_at` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `invitations` (
	`firm_id` text NOT NULL,
	`invitation_id` text NOT NULL,
	`token_hash` text NOT NULL,
	`name` text NOT NULL,
	`role` text NOT NULL,
	`account_id` text,
	`made_at` text NOT NULL,
	`expires_at` text NOT NULL,
	`used_at` text,
	PRIMARY KEY(`firm_id`, `invitation_id`),
	FOREIGN KEY (`firm_id`) REFERENCES `firms`(`firm_id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`firm_id`,`account_id`) REFERENCES `accounts`(`firm_id`,`account_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `invitations_token_hash_unique` ON `invitations` (`token_hash`);--> statement-breakpoint
CREATE TABLE `quotation_links` (
	`firm_id` text NOT NULL,
	`link_id` text NOT NULL,
	`token_hash` text NOT NULL,
	`job_id` text NOT NULL,
	`quotation_id` text NOT NULL,
	`made_at` text NOT NULL,
	`expires_at` text NOT NULL,
	`withdrawn_at` text,
	PRIMARY KEY(`firm_id`, `link_id`),
	FOREIGN KEY (`firm_id`,`job_id`,`quotation_id`) REFERENCES `quotations`(`firm_id`,`job_id`,`quotation_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `quotation_links_token_hash_unique` ON `quotation_links` (`token_hash`);--> statement-breakpoint
CREATE TABLE `sessions` (
	`firm_id` text NOT NULL,
	`token_hash` text NOT NULL,
	`account_id` text NOT NULL,
	`began_at` text NOT NULL,
	`seen_at` text NOT NULL,
	PRIMARY KEY(`firm_id`, `token_hash`),
	FOREIGN KEY (`firm_id`,`account_id`) REFERENCES `accounts`(`firm_id`,`account_id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `sessions_token_hash_unique` ON `sessions` (`token_hash`);