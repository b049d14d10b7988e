ALTER TABLE `order` RENAME COLUMN "weight" TO "importance";--> statement-breakpoint
ALTER TABLE `settings` ADD `currency` text;--> statement-breakpoint
-- What a moved line weighs is called stability; work that left its machine to others is suspended.
UPDATE `settings` SET `weights` = replace(`weights`, '"calm":', '"stability":');--> statement-breakpoint
UPDATE `record` SET `pauses` = replace(`pauses`, '"aside":true', '"suspended":true');--> statement-breakpoint
-- The history keeps whole rows: they get the new names and fields too, or an older step could not be undone. A quote
-- inside what a person wrote stands behind a backslash, so these patterns only meet the names of fields.
UPDATE `step` SET `changes` = replace(replace(replace(`changes`, '"weight":', '"importance":'), '"calm":', '"stability":'), '"aside":true', '"suspended":true');--> statement-breakpoint
UPDATE `step` SET `changes` = (
	SELECT json_group_array(json(CASE json_extract(`change`.`value`, '$.kind')
		WHEN 'settings' THEN json_set(`change`.`value`, '$.before.currency', NULL, '$.after.currency', NULL)
		ELSE `change`.`value` END))
	FROM json_each(`step`.`changes`) AS `change`
);
