CREATE TABLE `absence` (
	`id` text PRIMARY KEY NOT NULL,
	`people` integer NOT NULL,
	`from` integer NOT NULL,
	`to` integer NOT NULL,
	`reason` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
