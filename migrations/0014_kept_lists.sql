CREATE TABLE `keptList` (
	`id` text PRIMARY KEY NOT NULL,
	`groups` text NOT NULL,
	`steps` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
