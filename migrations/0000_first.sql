CREATE TABLE `calendar` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`shifts` text NOT NULL,
	`closures` text NOT NULL,
	`overtime` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `colour` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`hex` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `downtime` (
	`id` text PRIMARY KEY NOT NULL,
	`machineId` text NOT NULL,
	`from` integer NOT NULL,
	`to` integer NOT NULL,
	`reason` text NOT NULL,
	`revision` integer NOT NULL,
	FOREIGN KEY (`machineId`) REFERENCES `machine`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `line` (
	`id` text PRIMARY KEY NOT NULL,
	`orderId` text NOT NULL,
	`number` integer NOT NULL,
	`partId` text NOT NULL,
	`materialId` text NOT NULL,
	`gauge` text NOT NULL,
	`colourId` text NOT NULL,
	`lengthMm` real NOT NULL,
	`quantity` integer NOT NULL,
	`status` text NOT NULL,
	`revision` integer NOT NULL,
	FOREIGN KEY (`orderId`) REFERENCES `order`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`partId`) REFERENCES `part`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`materialId`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`colourId`) REFERENCES `colour`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE INDEX `line_order` ON `line` (`orderId`);--> statement-breakpoint
CREATE TABLE `machine` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`stage` text NOT NULL,
	`maxLengthMm` real NOT NULL,
	`maxThicknessMm` real NOT NULL,
	`tonnes` real,
	`dieOpeningMm` real,
	`backGaugeMm` text,
	`minStripMm` real,
	`crew` integer NOT NULL,
	`calendarId` text NOT NULL,
	`changeover` text NOT NULL,
	`standards` text NOT NULL,
	`state` text,
	`revision` integer NOT NULL,
	FOREIGN KEY (`calendarId`) REFERENCES `calendar`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `material` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`metal` text NOT NULL,
	`tensileMpa` real NOT NULL,
	`kFactor` real NOT NULL,
	`gauges` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `order` (
	`id` text PRIMARY KEY NOT NULL,
	`customer` text NOT NULL,
	`release` integer,
	`due` integer NOT NULL,
	`weight` real NOT NULL,
	`rush` integer NOT NULL,
	`status` text NOT NULL,
	`note` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `part` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`profile` text NOT NULL,
	`lengthMm` real NOT NULL,
	`note` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `pin` (
	`id` text PRIMARY KEY NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `queue` (
	`id` text PRIMARY KEY NOT NULL,
	`operations` text NOT NULL,
	`revision` integer NOT NULL,
	FOREIGN KEY (`id`) REFERENCES `machine`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `record` (
	`id` text PRIMARY KEY NOT NULL,
	`machineId` text NOT NULL,
	`partId` text NOT NULL,
	`materialId` text NOT NULL,
	`gauge` text NOT NULL,
	`colourId` text NOT NULL,
	`lengthMm` real NOT NULL,
	`quantity` integer NOT NULL,
	`good` integer NOT NULL,
	`scrapped` integer NOT NULL,
	`start` integer NOT NULL,
	`end` integer,
	`estimatedSeconds` integer NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE INDEX `record_start` ON `record` (`start`);--> statement-breakpoint
CREATE TABLE `settings` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`timeZone` text NOT NULL,
	`units` text NOT NULL,
	`weights` text NOT NULL,
	`frozenHours` real NOT NULL,
	`transferShare` real NOT NULL,
	`crewLimit` integer,
	`girthRule` text NOT NULL,
	`revision` integer NOT NULL
) STRICT;
--> statement-breakpoint
CREATE TABLE `sheet` (
	`id` text PRIMARY KEY NOT NULL,
	`materialId` text NOT NULL,
	`gauge` text NOT NULL,
	`colourId` text NOT NULL,
	`widthMm` real NOT NULL,
	`lengthMm` real NOT NULL,
	`costCents` integer NOT NULL,
	`onHand` integer NOT NULL,
	`revision` integer NOT NULL,
	FOREIGN KEY (`materialId`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`colourId`) REFERENCES `colour`(`id`) ON UPDATE no action ON DELETE no action
) STRICT;
--> statement-breakpoint
CREATE TABLE `step` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`label` text NOT NULL,
	`at` integer NOT NULL,
	`changes` text NOT NULL,
	`undone` integer NOT NULL
) STRICT;
