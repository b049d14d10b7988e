CREATE TABLE `cutCount` (
	`id` text PRIMARY KEY NOT NULL,
	`listId` text NOT NULL,
	`step` integer NOT NULL,
	`made` integer NOT NULL,
	`revision` integer NOT NULL
) STRICT;
