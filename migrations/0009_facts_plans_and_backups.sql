CREATE TABLE `changeover` (
	`id` text PRIMARY KEY NOT NULL,
	`operation` text NOT NULL,
	`since` integer NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `cutAnswer` (
	`key` text PRIMARY KEY NOT NULL,
	`plan` text NOT NULL,
	`settled` integer NOT NULL,
	`usedAt` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `fact` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`at` integer NOT NULL,
	`keptAt` integer NOT NULL,
	`command` text NOT NULL,
	`label` text NOT NULL,
	`operation` text,
	`machineId` text,
	`by` text NOT NULL,
	`corrects` integer,
	`reason` text NOT NULL,
	`changes` text NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX `fact_operation` ON `fact` (`operation`);--> statement-breakpoint
CREATE INDEX `fact_at` ON `fact` (`at`);--> statement-breakpoint
CREATE TABLE `published` (
	`id` text PRIMARY KEY NOT NULL,
	`operations` text NOT NULL,
	`revision` integer NOT NULL,
	FOREIGN KEY (`id`) REFERENCES `machine`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `savedPlan` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`name` text NOT NULL,
	`what` text NOT NULL,
	`at` integer NOT NULL,
	`by` text NOT NULL,
	`queues` text NOT NULL,
	`pins` text NOT NULL,
	`figures` text,
	`stepId` integer
) STRICT;
--> statement-breakpoint
CREATE TABLE `setAside` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`kind` text NOT NULL,
	`rowId` text NOT NULL,
	`content` text NOT NULL,
	`reason` text NOT NULL,
	`at` integer NOT NULL
) STRICT;
--> statement-breakpoint
ALTER TABLE `cutList` ADD `counted` text DEFAULT '[]' NOT NULL;--> statement-breakpoint
ALTER TABLE `order` ADD `closedAt` integer;--> statement-breakpoint
CREATE INDEX `order_closed` ON `order` (`closedAt`);--> statement-breakpoint
ALTER TABLE `settings` ADD `publishing` text DEFAULT 'always' NOT NULL;--> statement-breakpoint
ALTER TABLE `settings` ADD `backupFolder` text;--> statement-breakpoint
ALTER TABLE `step` ADD `by` text DEFAULT '' NOT NULL;--> statement-breakpoint
CREATE INDEX `record_machine` ON `record` (`machineId`,`end`);--> statement-breakpoint
-- Orders that are done or cancelled closed when the last of their work ended, or, without any, at their due date.
UPDATE `order` SET `closedAt` = coalesce(
	(SELECT max(`record`.`end`) FROM `record` JOIN `line` ON `record`.`id` IN (`line`.`id` || ':shear', `line`.`id` || ':brake') WHERE `line`.`orderId` = `order`.`id`),
	`due`
) WHERE `status` IN ('done', 'cancelled');--> statement-breakpoint
-- The history keeps whole rows: they get the new fields too, or an older step could not be undone.
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.publishing', 'always', '$.before.backupFolder', NULL, '$.after.publishing', 'always', '$.after.backupFolder', NULL)
		WHEN 'order' THEN json_set(`change`.`value`,
			'$.before.closedAt', CASE WHEN json_extract(`change`.`value`, '$.before.status') IN ('done', 'cancelled') THEN (SELECT `closedAt` FROM `order` WHERE `id` = json_extract(`change`.`value`, '$.id')) END,
			'$.after.closedAt', CASE WHEN json_extract(`change`.`value`, '$.after.status') IN ('done', 'cancelled') THEN (SELECT `closedAt` FROM `order` WHERE `id` = json_extract(`change`.`value`, '$.id')) END)
		WHEN 'cutList' THEN json_set(`change`.`value`, '$.before.counted', json_array(), '$.after.counted', json_array())
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
);
